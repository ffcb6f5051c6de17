/** How a name is compared with another: case and the spaces around and between words do not matter. */
export const keyOf = (name: string): string => name.normalize("NFC").trim().toLowerCase().replace(/\s+/gu, " ");
