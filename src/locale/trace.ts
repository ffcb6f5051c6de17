/**
 * Marks that say which message words are made of: an index in two signs of braille, which no message and no name holds.
 * They go through templates and Markdown as any sign does, and only a proof ever reads them.
 */
const first = 0x2800;
const base = 256;
const mark = /([\u2800-\u28ff])([\u2800-\u28ff])/g;

export type Trace = { mark: (key: string, words: string) => string; keysIn: (words: string) => string[] };

export function newTrace(): Trace {
  const keys: string[] = [];
  const indexOf = new Map<string, number>();
  return {
    mark: (key, words) => {
      const index = indexOf.get(key) ?? keys.push(key) - 1;
      indexOf.set(key, index);
      return String.fromCharCode(first + Math.floor(index / base), first + (index % base)) + words;
    },
    keysIn: (words) =>
      [...words.matchAll(mark)].flatMap(([, high = "", low = ""]) => {
        const index = (high.charCodeAt(0) - first) * base + low.charCodeAt(0) - first;
        return keys[index] ?? [];
      }),
  };
}
