import { describe, expect, it } from 'vitest';
import { refusalOf, TOKEN_HEADER, type Asked } from '../../src/take-readings/guard.ts';

const TOKEN = 'a-token';
const HOST = 'localhost:4321';
const WRITE: Asked = {
  method: 'POST',
  path: '/add',
  query: new URLSearchParams(),
  from: '127.0.0.1',
  body: '{}',
  headers: {
    host: HOST,
    origin: `http://${HOST}`,
    'sec-fetch-site': 'same-origin',
    'content-type': 'application/json',
    [TOKEN_HEADER]: TOKEN,
  },
};
const READ: Asked = { ...WRITE, method: 'GET', path: '/session', headers: { host: HOST, [TOKEN_HEADER]: TOKEN } };
const OPEN: Asked = {
  ...READ,
  path: '/',
  headers: { host: HOST, 'sec-fetch-site': 'none', 'sec-fetch-mode': 'navigate', 'sec-fetch-dest': 'document' },
};

const withHeaders = (asked: Asked, headers: Asked['headers']): Asked => ({
  ...asked,
  headers: { ...asked.headers, ...headers },
});

describe('the page and its server part are there for', () => {
  it.each([
    ['the page that writes', WRITE],
    ['the page that reads', READ],
    ['whoever opens the page', OPEN],
    ['a link to the page on another site', withHeaders(OPEN, { 'sec-fetch-site': 'cross-site' })],
    ['the other loopback addresses', { ...WRITE, from: '::1' }],
    ['an address of version 4 in one of version 6', { ...WRITE, from: '::ffff:127.0.0.1' }],
    ['a name by number', withHeaders(WRITE, { host: '127.0.0.1:4321', origin: 'http://127.0.0.1:4321' })],
    ['a name of version 6', withHeaders(WRITE, { host: '[::1]:4321', origin: 'http://[::1]:4321' })],
  ])('%s', (_who, asked) => expect(refusalOf(asked, TOKEN)).toBeUndefined());
});

describe('they refuse', () => {
  it.each([
    ['another machine', { ...WRITE, from: '192.0.2.7' }],
    ['another machine, to read', { ...READ, from: '2001:db8::1' }],
    ['another machine, to open', { ...OPEN, from: '10.0.0.2' }],
    ['an unknown address', { ...WRITE, from: undefined }],
    [
      'a site whose name leads here',
      withHeaders(WRITE, { host: 'rebound.example:4321', origin: 'http://rebound.example:4321' }),
    ],
    ['a name that only begins like this one', withHeaders(READ, { host: 'localhost.example' })],
    ['a name that only ends like this one', withHeaders(READ, { host: 'example.localhost' })],
    ['no name at all', withHeaders(READ, { host: undefined })],
    ['another site', withHeaders(WRITE, { origin: 'https://elsewhere.example' })],
    ['another port of this machine', withHeaders(WRITE, { origin: 'http://localhost:3000' })],
    ['another port of this machine, to read', withHeaders(READ, { origin: 'http://localhost:3000' })],
    ['a page without an origin', withHeaders(WRITE, { origin: 'null' })],
    ['no origin, to write', withHeaders(WRITE, { origin: undefined })],
    ['what the browser calls another site', withHeaders(WRITE, { 'sec-fetch-site': 'cross-site' })],
    ['what the browser calls another port', withHeaders(READ, { 'sec-fetch-site': 'same-site' })],
    [
      'the page in a frame of another site',
      withHeaders(OPEN, { 'sec-fetch-site': 'cross-site', 'sec-fetch-dest': 'iframe' }),
    ],
    [
      'the page as data of another port',
      withHeaders(OPEN, { 'sec-fetch-site': 'same-site', 'sec-fetch-mode': 'cors' }),
    ],
    ['no token, to write', withHeaders(WRITE, { [TOKEN_HEADER]: undefined })],
    ['no token, to read', withHeaders(READ, { [TOKEN_HEADER]: undefined })],
    ['another token', withHeaders(WRITE, { [TOKEN_HEADER]: 'b-token' })],
    ['a form', withHeaders(WRITE, { 'content-type': 'application/x-www-form-urlencoded' })],
    ['text, which another site may send without asking', withHeaders(WRITE, { 'content-type': 'text/plain' })],
    ['JSON by another name', withHeaders(WRITE, { 'content-type': 'application/jsonp' })],
    ['writing to the page itself', { ...OPEN, method: 'POST' }],
  ])('%s', (_who, asked) => expect(refusalOf(asked, TOKEN)).toMatch(/\.$/));
});
