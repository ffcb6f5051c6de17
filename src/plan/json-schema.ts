import { z } from "zod";
import { planSchema } from "./schema.js";

/**
 * The plan's JSON Schema (2020-12), for editors: what may be written, before it is read.
 * An unquoted 150.00 is a number to an editor and text to us, so every text may be written as a number.
 */
export const planJsonSchema = (): object =>
  z.toJSONSchema(planSchema, {
    io: "input",
    unrepresentable: "any",
    override: ({ jsonSchema }) => {
      if (jsonSchema.type === "string" && !jsonSchema.enum) Object.assign(jsonSchema, { type: ["string", "number"] });
    },
  });
