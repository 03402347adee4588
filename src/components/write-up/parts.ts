/** What an author may write in MDX without importing it. */
import Link from '../page/Link.astro';
import Advice from './Advice.astro';
import ChainBrackets from './ChainBrackets.astro';
import Difference from './Difference.astro';
import DifferenceChart from './DifferenceChart.astro';
import DifferenceTable from './DifferenceTable.astro';
import Effects from './Effects.astro';
import Figure from './Figure.astro';
import FigureChart from './FigureChart.astro';
import FigureTable from './FigureTable.astro';
import History from './History.astro';
import MethodNote from './MethodNote.astro';
import Ranking from './Ranking.astro';
import RateLaw from './RateLaw.astro';
import RateLawSentence from './RateLawSentence.astro';
import Ratio from './Ratio.astro';
import Readings from './Readings.astro';
import Verdict from './Verdict.astro';

export const parts = {
  Advice, ChainBrackets, Difference, DifferenceChart, DifferenceTable, Effects, Figure, FigureChart, FigureTable, History, MethodNote, Ranking,
  RateLaw, RateLawSentence, Ratio, Readings, Verdict,
  a: Link,
};
