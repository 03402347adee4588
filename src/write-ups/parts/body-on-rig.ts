/** What parts that speak of one body on one rig have in common. */
import { COMMON } from './common.ts';

export const BODY_ON_RIG = {
  body: { ...COMMON.body, means: 'which body' },
  rig: { ...COMMON.rig, means: 'on which rig' },
  caption: COMMON.title,
} as const;
