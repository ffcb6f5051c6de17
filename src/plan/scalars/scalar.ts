import { z } from "zod";

/** Why a scalar could not be understood: a problem code with its values, and the words inside the scalar it points at. */
export type Fault = { fault: string; values: Record<string, unknown>; offset?: number; length?: number };

const isFault = (result: unknown): result is Fault =>
  typeof result === "object" && result !== null && Object.hasOwn(result, "fault");

/** What an editor shows of a scalar: how it must look, and what it may look like. */
type Shown = { title: string; description: string; examples: string[]; pattern?: string };

/**
 * A value written as one piece of text ("24.6 kg", "2026-03-04 16:30"), with its own reader.
 * Every scalar reaches its reader as it was typed, so that 250.00 is 250.00 and 08:00 is a time.
 */
export const scalar = <T>(shown: Shown, read: (text: string) => T | Fault) =>
  z
    .string()
    .meta(shown)
    .transform((text, context): Exclude<T, Fault> => {
      const result = read(text.trim());
      if (!isFault(result)) return result as Exclude<T, Fault>;
      context.addIssue({ code: "custom", params: result });
      return z.NEVER;
    });
