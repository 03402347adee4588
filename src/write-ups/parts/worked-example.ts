import { claim } from './claim.ts';
import { differenceTable } from './difference-table.ts';
import { figure } from './figure.ts';
import { methodNote } from './method-note.ts';
import { verdict } from './verdict.ts';

/** Front matter and prose of a small report on the demonstration, from the examples of its parts. */
export const GUIDE_REPORT = `---
title: What genlock costs
summary: One body, free-running and following the reference of the house.
date: 2026-04-20
author: The video team
---

${figure.example}

${claim.example} ${verdict.example}

${differenceTable.example}

${methodNote.example}
`;
