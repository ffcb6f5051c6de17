/** Whether no owner ever reads a message: what problems are told in, and the words that staff look for a topic by. */
export const isForStaff = (name: string): boolean => /^problems:|^topics:.+\.also$/.test(name);
