/** `npm run docs`: writes the reference pages. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { folder, pages } from './pages.ts';

const root = process.cwd();
mkdirSync(join(root, folder), { recursive: true });
for (const [name, text] of Object.entries(pages(root))) {
  writeFileSync(join(root, folder, name), text);
  console.log(join(folder, name));
}
