import { claim } from './claim.ts';
import { differenceTable } from './difference-table.ts';
import { figure } from './figure.ts';
import { methodNote } from './method-note.ts';
import { verdict } from './verdict.ts';

/** Front matter and prose of a small report on the demonstration, from the examples of its parts. */
export const GUIDE_REPORT = `---
title: What embedded sound costs
summary: One body, with and without sound in the picture signal.
date: 2026-04-20
author: The video team
---

${figure.example}

${claim.example} ${verdict.example}

${differenceTable.example}

${methodNote.example}
`;
