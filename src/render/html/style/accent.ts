/** The clinic's own colour in place of the house's, by day and in the dark; a reader's own colours go before both. */
export const accentStyle = ({ light, dark }: { light: string; dark: string }): string => `
@media not (forced-colors: active) {
  :root { --accent: ${light}; }
  @media (prefers-color-scheme: dark) { :root { --accent: ${dark}; } }
}
`;
