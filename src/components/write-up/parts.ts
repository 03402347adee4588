/** What an author may write in MDX without importing it. */
import Link from '../page/Link.astro';
import Figure from './Figure.astro';
import FigureChart from './FigureChart.astro';
import FigureTable from './FigureTable.astro';
import MethodNote from './MethodNote.astro';
import Readings from './Readings.astro';

export const parts = { Figure, FigureChart, FigureTable, MethodNote, Readings, a: Link };
