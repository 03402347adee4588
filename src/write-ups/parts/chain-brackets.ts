import { PATHS } from '../../register/paths.ts';
import { briefRows, chainRows } from '../../views/chain-rows.ts';
import { COMMON } from './common.ts';
import { definePart } from './definition.ts';

export const chainBrackets = definePart({
  name: 'ChainBrackets',
  group: 'bodies',
  shows: 'what display, links and body can each take at least and at most of a total',
  needs: [],
  properties: { caption: COMMON.title },
  example: '<ChainBrackets />',
  failure: {
    written: '<ChainBrackets titel="The chain" />',
    says: '1:1  ChainBrackets  this part takes no property "titel"; expected caption.',
  },
  view: ({ caption = 'What each part of the chain can take at least and at most' }, { site }) => {
    const rows = briefRows(chainRows(site.bench, site.find, site.register.figures), site.find);
    return { rows, caption, path: PATHS.chain, isDrawn: rows.some(({ bracket }) => bracket?.limits !== undefined) };
  },
  figures: ({ rows, isDrawn }) =>
    isDrawn ? rows.flatMap(({ bracket, latency }) => [bracket ?? [], latency ?? []].flat()) : [],
});
