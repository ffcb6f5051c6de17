/**
 * Works through a stream, at most so many at once, and hands on what came of each in the order it came in. Nothing new is begun
 * while as many wait for one before them.
 */
export async function* inOrder<A, B>(
  from: AsyncIterable<A>,
  work: (one: A) => Promise<B>,
  most: number,
): AsyncGenerator<B> {
  const begun: Promise<B>[] = [];
  for await (const one of from) {
    const result = work(one);
    // It is looked at in its turn; until then a failure is nobody's surprise.
    result.catch(() => undefined);
    begun.push(result);
    const next = begun.length >= most ? begun.shift() : undefined;
    if (next) yield await next;
  }
  for (const next of begun) yield await next;
}
