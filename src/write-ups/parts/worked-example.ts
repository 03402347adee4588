import { PARTS } from '../parts.ts';

/** Front matter and prose of a small report on the demonstration, from the examples of its parts. */
export const GUIDE_REPORT = `---
title: What embedded sound costs
summary: One body, with and without sound in the picture signal.
date: 2026-04-20
author: The video team
---

${PARTS['Figure']?.example ?? ''}

${PARTS['Claim']?.example ?? ''} ${PARTS['Verdict']?.example ?? ''}

${PARTS['DifferenceTable']?.example ?? ''}

${PARTS['MethodNote']?.example ?? ''}
`;
