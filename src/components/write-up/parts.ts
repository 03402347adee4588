/** What an author may write in MDX without importing it: the markup of every part that there is. */
import type { PartName } from '../../write-ups/parts.ts';
import Link from '../page/Link.astro';
import Advice from './Advice.astro';
import ChainBrackets from './ChainBrackets.astro';
import Claim from './Claim.astro';
import Difference from './Difference.astro';
import DifferenceChart from './DifferenceChart.astro';
import DifferenceTable from './DifferenceTable.astro';
import Effects from './Effects.astro';
import Figure from './Figure.astro';
import FigureChart from './FigureChart.astro';
import FigureTable from './FigureTable.astro';
import History from './History.astro';
import Highest from './Highest.astro';
import InPractice from './InPractice.astro';
import Lowest from './Lowest.astro';
import MarkdownTable from '../page/MarkdownTable.astro';
import Picture from '../page/Picture.astro';
import MethodNote from './MethodNote.astro';
import Quoted from './Quoted.astro';
import Ranking from './Ranking.astro';
import RateLaw from './RateLaw.astro';
import RateLawSentence from './RateLawSentence.astro';
import Ratio from './Ratio.astro';
import Readings from './Readings.astro';
import Setting from './Setting.astro';
import Verdict from './Verdict.astro';

export const parts = {
  Advice,
  ChainBrackets,
  Claim,
  Difference,
  DifferenceChart,
  DifferenceTable,
  Effects,
  Figure,
  FigureChart,
  FigureTable,
  Highest,
  History,
  InPractice,
  Lowest,
  MethodNote,
  Quoted,
  Ranking,
  RateLaw,
  RateLawSentence,
  Ratio,
  Readings,
  Setting,
  Verdict,
  a: Link,
  img: Picture,
  table: MarkdownTable,
} satisfies Record<PartName | 'a' | 'img' | 'table', unknown>;
