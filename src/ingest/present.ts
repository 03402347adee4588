/** The same object type with every key that may be undefined made optional instead. */
export type Present<T> = { [K in keyof T as undefined extends T[K] ? never : K]: T[K] } & {
  [K in keyof T as undefined extends T[K] ? K : never]?: Exclude<T[K], undefined>;
};

/** Leaves out the keys that hold undefined, so that an absent key is absent and never `undefined`. */
export function present<T extends object>(value: T): Present<T> {
  return Object.fromEntries(Object.entries(value).filter(([, part]) => part !== undefined)) as Present<T>;
}
