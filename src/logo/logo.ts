/** A logo ready to be drawn: PNG on white without transparency, for print and for a screen. width, height: their proportions. */
export type Logo = { print: Uint8Array; screen: Uint8Array; width: number; height: number };
