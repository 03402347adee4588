import { parseFragment } from 'parse5';
import { describe, expect, it } from 'vitest';
import { renderMarkdown } from '../../src/components/render-markdown.ts';
import type { Clip, Illustration, Photograph } from '../../src/model/illustration.ts';
import { attributeOf, elementsOf } from '../../src/verify/html.ts';

const photograph = (path: string): Photograph => ({
  kind: 'photograph',
  file: { path, sha256: '0123456789abcdef'.repeat(4), bytes: 1 },
  width: 1200,
  height: 800,
  isLossless: false,
});
const clip = (change: Partial<Clip> = {}): Clip => ({
  ...photograph('data/rigs/pan.mp4'),
  kind: 'clip',
  seconds: 4,
  poster: photograph('data/rigs/pan.jpg'),
  inWords: 'A hand passes.\nIt passes <again>.',
  flashes: false,
  ...change,
});
const shown = (to: string, shows: Illustration['shows']): Illustration => ({ text: 'data/rigs/a.md', to, shows });

const render = (text: string, illustrations: readonly Illustration[]) =>
  elementsOf(parseFragment(renderMarkdown({ text, illustrations }, '/rigs/a/')));

describe('a photograph on a page', () => {
  const elements = render('![The rig](My%20rig.jpg "Its <caption>")', [
    shown('My rig.jpg', photograph('data/rigs/My rig.jpg')),
  ]);
  const named = (name: string) => elements.filter(({ tagName }) => tagName === name);

  it('stands by itself, in no paragraph', () => {
    expect(elements.map(({ tagName }) => tagName)).toEqual([
      'div',
      'figure',
      'a',
      'picture',
      'source',
      'img',
      'figcaption',
    ]);
  });

  it('has its words, its caption, its size, and every address from the folder of the page', () => {
    const [image] = named('img');
    if (image === undefined) throw new Error('no picture');
    expect(attributeOf(image, 'alt')).toBe('The rig');
    expect([attributeOf(image, 'width'), attributeOf(image, 'height')]).toEqual(['1200', '800']);
    const at = '../../pictures/my-rig-0123456789';
    expect(attributeOf(image, 'src')).toBe(`${at}-960.jpg`);
    expect(attributeOf(image, 'srcset')).toBe(`${at}-480.jpg 480w, ${at}-960.jpg 960w, ${at}-1200.jpg 1200w`);
    const [source, link] = [named('source')[0], named('a')[0]];
    expect(source && attributeOf(source, 'srcset')).toContain(`${at}-960.webp 960w`);
    expect(link && attributeOf(link, 'href')).toBe(`${at}-1200.jpg`);
  });
});

it('several pictures of one paragraph stand side by side, and a cell of a table may hold one', () => {
  const rig = shown('a.jpg', photograph('data/rigs/a.jpg'));
  const two = render('![one](a.jpg)\n![two](a.jpg)', [rig]);
  expect(two.filter(({ tagName }) => tagName === 'div' || tagName === 'figure').map(({ tagName }) => tagName)).toEqual([
    'div',
    'figure',
    'figure',
  ]);
  const cell = render('| a |\n|---|\n| ![one](a.jpg) |', [rig]).find(({ tagName }) => tagName === 'td');
  expect(cell && elementsOf(cell).map(({ tagName }) => tagName)).toContain('figure');
});

describe('a clip on a page', () => {
  const video = (of: Clip) => {
    const elements = render('![A pan](pan.mp4)', [shown('pan.mp4', of)]);
    const [element] = elements.filter(({ tagName }) => tagName === 'video');
    if (element === undefined) throw new Error('no clip');
    return { elements, element };
  };
  const html = (of: Clip) => renderMarkdown({ text: '![A pan](pan.mp4)', illustrations: [shown('pan.mp4', of)] }, '/');

  it('never starts by itself, loads nothing before, and shows its poster', () => {
    const { element } = video(clip());
    expect(element.attrs.map(({ name }) => name)).toEqual([
      'controls',
      'playsinline',
      'preload',
      'width',
      'height',
      'poster',
      'aria-label',
    ]);
    expect(attributeOf(element, 'preload')).toBe('none');
    expect(attributeOf(element, 'poster')).toBe('../../pictures/pan-0123456789-960.jpg');
  });

  it('says in words what is seen and heard, as text', () => {
    expect(html(clip())).toContain('<p>A hand passes.</p><p>It passes &#60;again&#62;.</p>');
    expect(html(clip())).not.toContain('<track');
  });

  it('has its captions as a track, in their language', () => {
    const file = { path: 'data/rigs/pan.vtt', sha256: 'f'.repeat(64), bytes: 1 };
    expect(html(clip({ captions: { file, language: 'de' } }))).toContain(
      '<track kind="captions" src="pictures/pan-ffffffffff.vtt" srclang="de" label="Captions">',
    );
  });

  it('warns before it where something flashes, and nowhere else', () => {
    const { elements } = video(clip({ flashes: true }));
    const order = elements.map(({ tagName }) => tagName);
    expect(order.indexOf('strong')).toBeGreaterThan(0);
    expect(order.indexOf('strong')).toBeLessThan(order.indexOf('video'));
    expect(html(clip())).not.toContain('flashes');
  });
});
