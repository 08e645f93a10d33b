/** Neovim's own client (Debian's neovim, headless) drives the server: found, fixed, completed, hovered, renamed, laid out. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { serverFile } from './client.ts';

interface Report {
  readonly before: readonly { readonly code: string; readonly line: number; readonly severity: number }[];
  readonly after: readonly { readonly code: string }[];
  readonly completed: readonly string[];
  readonly hover: string;
  readonly renamed: readonly string[];
  readonly formatted: readonly string[];
}

const folder = realpathSync(mkdtempSync(join(tmpdir(), 'nappe-nvim-')));
let report: Report;

/** What the editor does, in its own language; what it saw is written as JSON. */
const script = (server: string, file: string, out: string) => `
local function fail(what)
  io.stderr:write(what .. '\\n')
  vim.cmd('cquit 1')
end
vim.cmd('edit ${file}')
local buffer = vim.api.nvim_get_current_buf()
local client = vim.lsp.start_client({ name = 'nappe', cmd = { '${process.execPath}', '${server}', '--stdio' }, root_dir = '${folder}' })
if not client then fail('the server does not start') end
vim.lsp.buf_attach_client(buffer, client)

local function diagnostics()
  local found = {}
  for _, one in ipairs(vim.diagnostic.get(buffer)) do
    table.insert(found, { code = one.code or one.user_data.lsp.code, line = one.lnum, severity = one.severity })
  end
  return found
end
local function wait(what, condition)
  if not vim.wait(60000, condition, 20) then fail('waited in vain for ' .. what) end
end
local function ask(method, params)
  local answers = vim.lsp.buf_request_sync(buffer, method, params, 60000)
  local answer = answers and answers[client]
  if not answer or answer.error then fail(method .. ': ' .. vim.inspect(answers)) end
  return answer.result
end
local function lines() return vim.api.nvim_buf_get_lines(buffer, 0, -1, false) end
local function at(line, column)
  vim.api.nvim_win_set_cursor(0, { line + 1, column })
  return vim.lsp.util.make_position_params(0, 'utf-16')
end
local function lineOf(text)
  for number, line in ipairs(lines()) do if line:find(text, 1, true) then return number - 1 end end
  fail('no line ' .. text)
end

local report = {}
wait('fold-too-warm', function() return #diagnostics() > 0 end)
report.before = diagnostics()

local hover = ask('textDocument/hover', at(lineOf('cook to'), 3))
report.hover = hover.contents.value

local add = lineOf('add gelatin')
vim.api.nvim_buf_set_lines(buffer, add + 1, add + 1, false, { '  cool liaison to ' })
local completed = {}
local behind = at(add + 1, 17)
behind.position.character = 18
for _, item in ipairs(ask('textDocument/completion', behind).items) do table.insert(completed, item.label) end
report.completed = completed
vim.api.nvim_buf_set_lines(buffer, add + 1, add + 2, false, { '  cool liaison to 30-34 °C' })
wait('no more diagnostics', function() return #diagnostics() == 0 end)
report.after = diagnostics()

local params = at(lineOf('as liaison'), lines()[lineOf('as liaison') + 1]:find('liaison', 1, true))
params.newName = 'custard'
vim.lsp.util.apply_workspace_edit(ask('textDocument/rename', params), 'utf-16')
report.renamed = lines()

vim.api.nvim_buf_set_lines(buffer, add, add + 1, false, { 'add    gelatin' })
vim.lsp.buf.formatting_sync({}, 60000)
report.formatted = lines()

local written = io.open('${out}', 'w')
written:write(vim.json.encode(report))
written:close()
vim.lsp.stop_client(client)
vim.cmd('qall!')
`;

beforeAll(async () => {
  const sample = readFileSync(new URL('../../samples/faulty/fold-too-warm.nappe', import.meta.url), 'utf8');
  const file = join(folder, 'bavarois.nappe');
  const out = join(folder, 'report.json');
  writeFileSync(file, sample.replace(/ +\/\/ expect.*/g, ''));
  writeFileSync(join(folder, 'drive.lua'), script(await serverFile(), file, out));
  const words = ['--headless', '-u', 'NONE', '-n', '-i', 'NONE', '-c', `luafile ${join(folder, 'drive.lua')}`];
  const { status, stderr, error } = spawnSync('nvim', words, {
    encoding: 'utf8',
    timeout: 110_000,
    env: { ...process.env, XDG_STATE_HOME: folder, XDG_CACHE_HOME: folder },
  });
  if (error) throw new Error(`Neovim does not run (Debian: apt-get install neovim): ${error.message}`);
  if (status !== 0) throw new Error(`Neovim ended with ${status}: ${stderr}`);
  report = JSON.parse(readFileSync(out, 'utf8')) as Report;
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

test('shows fold-too-warm at its line, as an error', () => {
  expect(report.before).toEqual([{ code: 'fold-too-warm', line: 15, severity: 1 }]);
});

test('sees it vanish after the edit', () => {
  expect(Object.values(report.after)).toEqual([]);
});

test('completes with a reading usual for the verb', () => {
  expect(report.completed).toContain('30-34 °C');
});

test('hovers', () => {
  expect(report.hover).toMatch(/\*\*liaison\*\* after this step/);
  expect(report.hover).toContain('82–84 °C');
});

test('renames everywhere', () => {
  expect(report.renamed.filter((line) => line.includes('liaison'))).toEqual([]);
  expect(report.renamed.filter((line) => line.includes('custard'))).toHaveLength(4);
});

test('lays out', () => {
  expect(report.formatted).toContain('  add gelatin');
});
