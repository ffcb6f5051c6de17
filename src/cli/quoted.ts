/** A text as one word of a shell: bash, zsh and POSIX sh read it as it stands. */
export const quoted = (text: string): string => `'${text.replaceAll("'", "'\\''")}'`;
