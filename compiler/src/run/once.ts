/** Work put off until someone asks for it, and then done once. */

export function once<T>(work: () => T): () => T {
  let done: { readonly value: T } | null = null;
  return () => {
    done ??= { value: work() };
    return done.value;
  };
}
