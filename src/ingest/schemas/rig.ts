import { z } from 'zod';
import { durationMs, flag, positiveDurationMs, rate, rowHeight, text, tolerancePpm } from '../fields.ts';
import { present } from '../present.ts';

export const sourceTimer = z
  .strictObject({
    name: text,
    refresh: rate,
    resolution: positiveDurationMs.optional(),
    'wraps-after': positiveDurationMs.optional(),
    'clock-tolerance': tolerancePpm.optional(),
  })
  .transform(({ name, refresh, resolution, 'wraps-after': wrapsAfterMs, 'clock-tolerance': clockTolerancePpm }) =>
    present({ name, refresh, resolutionMs: resolution, wrapsAfterMs, clockTolerancePpm }),
  );

export const observer = z
  .strictObject({
    name: text,
    rate,
    exposure: positiveDurationMs.optional(),
    readout: durationMs.optional(),
    'source-row': rowHeight.optional(),
    'display-row': rowHeight.optional(),
    'clock-tolerance': tolerancePpm.optional(),
  })
  .transform(
    ({
      exposure,
      readout,
      'source-row': sourceRow,
      'display-row': displayRow,
      'clock-tolerance': clockTolerancePpm,
      ...rest
    }) => present({ ...rest, exposureMs: exposure, readoutMs: readout, sourceRow, displayRow, clockTolerancePpm }),
  );

const instrument = z
  .strictObject({ name: text, 'expanded-uncertainty': positiveDurationMs })
  .transform(({ name, 'expanded-uncertainty': expandedUncertaintyMs }) => ({ name, expandedUncertaintyMs }));

/** Front matter of `data/rigs/<id>.md`. */
export const rigSchema = z
  .strictObject({
    name: text,
    'source-timer': sourceTimer.optional(),
    observer: observer.optional(),
    instrument: instrument.optional(),
    display: text,
    'digits-row': rowHeight.optional(),
    links: z.array(text).optional(),
    invented: flag,
  })
  .transform(({ 'source-timer': sourceTimerValue, 'digits-row': digitsRow, links = [], invented = false, ...rest }) =>
    present({ ...rest, sourceTimer: sourceTimerValue, digitsRow, links, invented }),
  );
