/** Freezes a value and all that it holds. What is frozen already is taken to be frozen throughout. */
export function freezeDeep<T>(value: T): T {
  if (typeof value !== 'object' || value === null || Object.isFrozen(value)) return value;
  Object.freeze(value);
  for (const part of Object.values(value)) freezeDeep(part);
  return value;
}
