/** A pure function of a frozen object, computed once for each object as long as that object lives. */
export function once<Key extends object, Value>(compute: (key: Key) => Value): (key: Key) => Value {
  const known = new WeakMap<Key, { readonly value: Value }>();
  return (key) => {
    const found = known.get(key) ?? { value: compute(key) };
    known.set(key, found);
    return found.value;
  };
}

/** A value that is computed when it is first asked for, and kept. */
export function lazy<Value>(compute: () => Value): () => Value {
  let kept: { readonly value: Value } | undefined;
  return () => {
    kept ??= { value: compute() };
    return kept.value;
  };
}
