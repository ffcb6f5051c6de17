/** The system's short code for why a file could not be used ("ENOENT"), or null: the error is of our own making. */
export const systemCode = (error: unknown): string | null =>
  error instanceof Error && "code" in error && typeof error.code === "string" ? error.code : null;
