import { expect, it } from 'vitest';
import { renderEstimates } from '../../src/charts/estimates.ts';
import { describeSoundThresholds, SOUND_THRESHOLDS } from '../../src/views/sound-thresholds.ts';
import { figure } from '../charts/examples.ts';
import { axisScale } from '../charts/scale.ts';
import { marksOf, textsOf } from '../charts/svg.ts';

it('are those of the standards, for sound ahead of picture, smallest first', () => {
  // ITU-R BT.1359-1 (1998), considering g): detectability +45 ms, acceptability +90 ms; EBU R 37-2007, Table 1: 40 ms
  // (quoted).
  expect(SOUND_THRESHOLDS.map(({ ms, source }) => [ms, source])).toEqual([
    [40, 'EBU R 37-2007'],
    [45, 'ITU-R BT.1359-1'],
    [90, 'ITU-R BT.1359-1'],
  ]);
  for (const { ms, source } of SOUND_THRESHOLDS)
    expect(describeSoundThresholds()).toMatch(new RegExp(`${ms} ms[^;]*${source}`));
});

it('stand on a chart as dashed lines where its axis says, also beyond its figures, and are named under it', async () => {
  const marked = { values: SOUND_THRESHOLDS.map(({ ms }) => ms), note: describeSoundThresholds() };
  const chart = await renderEstimates({ id: 'chart', rows: [{ label: 'Fast', figure: figure(30, 2) }], marked });
  for (const svg of [chart.wide, chart.narrow]) {
    const valueAt = axisScale(svg, 'x');
    expect(marksOf(svg, 'marked').map(({ x }) => Math.round(valueAt(x)))).toEqual([40, 45, 90]);
    // the axis has room for all of them
    expect(
      Math.max(
        ...textsOf(svg)
          .map(({ text }) => Number(text))
          .filter(Number.isFinite),
      ),
    ).toBeGreaterThanOrEqual(90);
    expect(
      textsOf(svg)
        .map(({ text }) => text)
        .join(' '),
    ).toContain('how far sound may be ahead of picture');
  }
  expect(chart.description).toContain('90 ms, no longer acceptable');
  const plain = await renderEstimates({ id: 'chart', rows: [{ label: 'Fast', figure: figure(30, 2) }] });
  expect(marksOf(plain.wide, 'marked')).toEqual([]);
});
