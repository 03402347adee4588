interface Quantity {
  readonly unit: string;
  readonly value: number;
}

/** Far more than arithmetic on decimals loses, far less than any digit that is written. */
const ROUNDING = 1e-9;

/** Whether two quantities are one, sign aside: `0.1 s` and `100 ms`. */
export function isSameQuantity(a: Quantity, b: Quantity): boolean {
  return a.unit === b.unit && Math.abs(Math.abs(a.value) - Math.abs(b.value)) <= ROUNDING * Math.abs(a.value);
}
