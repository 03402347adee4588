import { expect, it } from 'vitest';
import { countErrors } from './null-demonstrations.ts';

it('ten demonstrations without differences: nine comparisons each, and next to nothing false (npm run error-rates takes 2,000)', () => {
  const errors = countErrors(10, 1);
  expect(errors).toMatchObject({ demonstrations: 10, comparisons: 90 });
  // at 5.5 % the chance of four or more in ten is 0.2 %
  expect(errors.falseDifferences).toBeLessThan(4);
  // 90 × 5 % is 4.5; comparisons of a family share sessions, so the limit is generous
  expect(errors.falseSameness).toBeLessThan(20);
});
