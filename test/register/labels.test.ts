import { expect, it } from 'vitest';
import { labelSessions, sessionTitle } from '../../src/register/labels.ts';
import { bench, session } from '../support/small-bench.ts';

const uhd = (id: string, more = {}) => session(id, { rate: '24', resolution: 'uhd', 'audio-out': 'off' }, more);

it('names a session on its own by body and rate', () => {
  const only = uhd('a');
  expect(sessionTitle(bench([only]), only)).toBe('Alba One, 24 frames/s');
});

it('says what all share once, and in each row only what sets it apart', () => {
  const sessions = [uhd('a'), session('b', { rate: '25', resolution: 'uhd', 'audio-out': 'off' })];
  const { of, shared } = labelSessions(bench(sessions), sessions);
  expect([...of.values()]).toEqual(['24 frames/s', '25 frames/s']);
  expect(shared).toBe('Alba One; resolution UHD 3840 × 2160; embedded audio off; rig Attic; Screen.');
});

it('says what most have once, "unless stated", and the exception in its row', () => {
  const sessions = [
    uhd('a'),
    session('b', { rate: '25', resolution: 'uhd', 'audio-out': 'off' }),
    session('c', { rate: '25', resolution: 'hd', 'audio-out': 'off' }),
  ];
  const { of, shared } = labelSessions(bench(sessions), sessions);
  expect([...of.values()]).toEqual(['24 frames/s', '25 frames/s', '25 frames/s, HD 1920 × 1080']);
  expect(shared).toBe('Alba One; embedded audio off; rig Attic; Screen. Unless stated: resolution UHD 3840 × 2160.');
});

it('says a setting of every session where none has a majority', () => {
  const sessions = [uhd('a'), session('b', { rate: '24', resolution: 'uhd', 'audio-out': 'on' })];
  expect([...labelSessions(bench(sessions), sessions).of.values()]).toEqual([
    'Embedded audio off',
    'Embedded audio on',
  ]);
});

it('tells repeats apart by date, and by id where the date is the same', () => {
  const byDate = [uhd('a', { date: '2026-01-02' }), uhd('b', { date: '2026-01-03' })];
  expect([...labelSessions(bench(byDate), byDate).of.values()]).toEqual(['2026-01-02', '2026-01-03']);
  const byId = [uhd('a'), uhd('b')];
  expect([...labelSessions(bench(byId), byId).of.values()]).toEqual(['a', 'b']);
});

it('leaves a firmware out where all sessions of a body have it', () => {
  const sessions = [
    uhd('a', { firmware: '1.0' }),
    uhd('b', { body: 'brae', firmware: '7' }),
    uhd('c', { body: 'brae', firmware: '7' }),
    uhd('d', { body: 'brae', firmware: '8' }),
  ];
  expect([...labelSessions(bench(sessions), sessions).of.values()]).toEqual([
    'Alba One',
    'Brae, b',
    'Brae, c',
    'Brae, firmware 8',
  ]);
});
