/** What an author may write in MDX, by name and property: what the check of write-ups and the authoring guide go by. */
export interface PartDefinition {
  /** Properties it needs; a list in the list means one of these. */
  readonly needs: readonly (string | readonly string[])[];
  readonly takes: readonly string[];
  /** The kind of figure that its sessions must have, where it selects sessions without naming a kind. */
  readonly selects?: string;
}

const SELECTION = ['ids', 'kind', 'body', 'rig', 'method', 'where', 'caption'] as const;
const LAW = ['body', 'rig', 'method', 'where'] as const;

const COMPARISONS = ['pairs', 'setting', 'body', 'rig', 'where', 'margin', 'caption'] as const;

export const PARTS: Readonly<Record<string, PartDefinition>> = {
  Advice: { needs: ['body', 'rig'], takes: ['body', 'rig', 'caption'] },
  Difference: { needs: ['of', 'than'], takes: ['of', 'than', 'margin'] },
  DifferenceChart: { needs: [['pairs', 'setting', 'where'], 'caption'], takes: COMPARISONS },
  DifferenceTable: { needs: [['pairs', 'setting', 'where'], 'caption'], takes: COMPARISONS },
  Effects: { needs: ['body', 'rig'], takes: ['body', 'rig', 'caption'] },
  Figure: { needs: ['id'], takes: ['id', 'show'] },
  FigureTable: { needs: [['ids', 'kind'], 'caption'], takes: SELECTION },
  FigureChart: { needs: [['ids', 'kind'], 'caption'], takes: [...SELECTION, 'bands'] },
  Ranking: { needs: [['ids', 'kind'], 'caption'], takes: SELECTION },
  Ratio: { needs: ['of', 'than'], takes: ['of', 'than', 'margin'] },
  Readings: { needs: ['session'], takes: ['session'] },
  RateLaw: { needs: ['body'], takes: [...LAW, 'caption'], selects: 'total' },
  RateLawSentence: { needs: ['body'], takes: LAW, selects: 'total' },
  ChainBrackets: { needs: [], takes: ['caption'] },
  History: { needs: ['body'], takes: ['body'] },
  MethodNote: { needs: ['of'], takes: ['of'] },
  Verdict: { needs: ['of', 'than'], takes: ['of', 'than', 'margin'] },
};
