/** What was ticked, kept on this device under one name. A device that keeps nothing, or forbids it, loses no more than that. */
export function ticksOf(key: string) {
  const ticked = new Set(read(key));
  const fresh = new Set<string>();
  return {
    has: (id: string): boolean => ticked.has(id),
    /** Ticked when the page was opened, and not since. */
    wasSet: (id: string): boolean => ticked.has(id) && !fresh.has(id),
    set(id: string, on: boolean): void {
      fresh.add(id);
      if (on) ticked.add(id);
      else ticked.delete(id);
      try {
        localStorage.setItem(key, JSON.stringify([...ticked]));
      } catch {
        // Full or forbidden: the boxes still work while the page is open.
      }
    },
  };
}

export type Ticks = ReturnType<typeof ticksOf>;

function read(key: string): string[] {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(key) ?? "[]");
    return Array.isArray(kept) ? kept.filter((id) => typeof id === "string") : [];
  } catch {
    return [];
  }
}
