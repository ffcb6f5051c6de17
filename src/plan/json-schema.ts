import { z } from "zod";
import { clinicSchema } from "./clinic-schema.js";
import { planSchema } from "./schema.js";

/**
 * The plan's JSON Schema (2020-12), for editors: what may be written, before it is read.
 * An unquoted 150.00 is a number to an editor and text to us, so every text may be written as a number.
 */
export const planJsonSchema = (): object => written(planSchema);

/** The same of a clinic profile. */
export const clinicJsonSchema = (): object => written(clinicSchema);

const written = (schema: z.ZodType): object =>
  z.toJSONSchema(schema, {
    io: "input",
    unrepresentable: "any",
    override: ({ jsonSchema }) => {
      if (jsonSchema.type === "string" && !jsonSchema.enum) Object.assign(jsonSchema, { type: ["string", "number"] });
    },
  });
