import type { Bench } from '../../model/bench.ts';
import { parseRate, rateKey } from '../../model/rate.ts';
import { findQuantities } from './find-quantities.ts';
import { isSameQuantity } from './same-quantity.ts';

type Asked = { readonly unit: string; readonly value: number; readonly rate?: string };

/** Whether a quantity is one that this bench sets (a level) or runs at (a rate): a setting, whoever writes it. */
export function settingQuantities({ settings, displays, rigs }: Bench): (quantity: Asked) => boolean {
  const levels = settings.flatMap((setting) => setting.levels);
  const rates = [
    ...settings
      .filter(({ kind }) => kind === 'rate')
      .flatMap((setting) => setting.levels.flatMap(({ id }) => parseRate(id) ?? [])),
    ...displays.map(({ refresh }) => refresh),
    ...rigs.flatMap(({ sourceTimer, observer }) => [sourceTimer?.refresh ?? [], observer?.rate ?? []].flat()),
  ];
  const keys = new Set(rates.map(rateKey));
  const set = levels.flatMap(({ id, label }) => [...findQuantities(id), ...findQuantities(label)]);
  return (quantity) => {
    const rate = quantity.rate === undefined ? undefined : parseRate(quantity.rate);
    return rate === undefined ? set.some((each) => isSameQuantity(each, quantity)) : keys.has(rateKey(rate));
  };
}
