import { findSteering } from './control-characters.ts';
import type { Report } from './source.ts';

const NEWLINE = 0x0a;
const PROBE_BYTES = 4096;

/**
 * The bytes without a UTF-8 byte order mark; undefined, with a problem reported, when they are not UTF-8 text without
 * control characters.
 */
export function checkEncoding(bytes: Uint8Array, report: Report): Uint8Array | undefined {
  if (looksLikeUtf16(bytes)) {
    report({ code: 'utf-16' });
    return undefined;
  }
  const nul = bytes.indexOf(0);
  if (nul >= 0) {
    report({ code: 'nul-byte', line: lineAt(bytes, nul) });
    return undefined;
  }
  if (!isUtf8(bytes)) {
    report({ code: 'not-utf-8', line: firstInvalidLine(bytes) });
    return undefined;
  }
  const text = startsWith(bytes, [0xef, 0xbb, 0xbf]) ? bytes.subarray(3) : bytes;
  const steering = findSteering(new TextDecoder().decode(text));
  if (steering === undefined) return text;
  const { name, line, column } = steering;
  report({ code: 'control-character', line, column, found: name });
  return undefined;
}

/** A UTF-16 byte order mark; or, without one, Western text in it: a zero in nearly every other byte and in no other. */
function looksLikeUtf16(bytes: Uint8Array): boolean {
  if (startsWith(bytes, [0xff, 0xfe]) || startsWith(bytes, [0xfe, 0xff])) return true;
  const probe = bytes.subarray(0, PROBE_BYTES);
  const zeros = [0, 0];
  probe.forEach((byte, index) => {
    if (byte === 0) zeros[index % 2] = (zeros[index % 2] ?? 0) + 1;
  });
  const [fewer = 0, more = 0] = zeros.toSorted((a, b) => a - b);
  return probe.length >= 4 && fewer === 0 && more > probe.length * 0.4;
}

/** No byte of a UTF-8 sequence is a newline, so each line is valid or not by itself. */
function firstInvalidLine(bytes: Uint8Array): number {
  let start = 0;
  for (let line = 1; ; line += 1) {
    const end = bytes.indexOf(NEWLINE, start);
    if (end < 0 || !isUtf8(bytes.subarray(start, end))) return line;
    start = end + 1;
  }
}

function lineAt(bytes: Uint8Array, offset: number): number {
  let line = 1;
  for (let at = bytes.indexOf(NEWLINE); at >= 0 && at < offset; at = bytes.indexOf(NEWLINE, at + 1)) line += 1;
  return line;
}

function startsWith(bytes: Uint8Array, prefix: readonly number[]): boolean {
  return prefix.every((byte, index) => bytes[index] === byte);
}

function isUtf8(bytes: Uint8Array): boolean {
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return true;
  } catch {
    return false;
  }
}
