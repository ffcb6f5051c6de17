import type { Species } from "../facts.js";
import type { Exact } from "./exact.js";

/** What of an animal a dose may go by. */
export type Body = { kg: Exact; species: Species };

/**
 * Square metres of skin by Meeh's formula, K times the cube root of grams squared, over ten thousand: K is 10.1 for dogs
 * (conversion tables of oncology texts, read) and 10.0 for cats (from memory of the same tables).
 */
export const squareMetres = ({ kg, species }: Body): Exact =>
  kg.times(1000).pow(2).cbrt().times({ dog: "10.1", cat: "10.0" }[species]).div(10_000);
