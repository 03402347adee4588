import { expect, inject, it } from 'vitest';
import { readBuiltSite, sha256 } from '../support/built-site.ts';
import { copyProject, openCopy } from '../support/project-copy.ts';

it('the same files give the same bytes in another folder, time zone, language and order of files', () => {
  const first = readBuiltSite(openCopy(inject('builtProject')).dist);
  using copy = copyProject({ name: 'a folder with spaces (and ünïcode)', backwards: true });
  copy.build({ TZ: 'Asia/Tokyo', LANG: 'tr_TR.UTF-8', LC_ALL: 'tr_TR.UTF-8', FORCE_COLOR: '1' });
  const second = readBuiltSite(copy.dist);
  expect(first.files.length).toBeGreaterThan(130);
  expect(second.files).toEqual(first.files);
  expect(first.files.filter((path) => sha256(first.bytes(path)) !== sha256(second.bytes(path)))).toEqual([]);
});

it('no file of the site names the folder in which it was built', () => {
  const { root, dist } = openCopy(inject('builtProject'));
  const site = readBuiltSite(dist);
  expect(site.files.filter((path) => site.bytes(path).includes(root))).toEqual([]);
});
