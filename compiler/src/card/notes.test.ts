/** Notes: Markdown comes through, everything else stays text. */
import { toHtml } from 'hast-util-to-html';
import { describe, expect, it } from 'vitest';
import { noteHtml } from './notes.ts';
import { plain } from './text.ts';

const html = (markdown: string): string => toHtml(noteHtml(markdown));

describe('a note', () => {
  it('keeps emphasis, lists, links and tables', () => {
    expect(html('A *soft* peak, **not** stiff.')).toBe('<p>A <em>soft</em> peak, <strong>not</strong> stiff.</p>');
    expect(html('[recipe](https://school.example/a)')).toBe('<p><a href="https://school.example/a">recipe</a></p>');
    expect(html('| a | b |\n|---|---|\n| 1 | 2 |')).toContain('<td>2</td>');
    expect(html('- [x] weighed\n- [ ] chilled')).toBe('<ul>\n<li>☑ weighed</li>\n<li>☐ chilled</li>\n</ul>');
  });

  it.each([
    ['<script>alert(1)</script>'],
    ['"><img src=x onerror=alert(1)>'],
    ['[x](javascript:alert(1))'],
    ['[x](JaVaScRiPt&#58;alert(1))'],
    ['[x](data:text/html,<script>alert(1)</script>)'],
    ['![x](http://tracker.example/a.png)'],
    ['<svg onload=alert(1)>'],
    ['<style>*{display:none}</style>'],
    ['[a]: javascript:alert(1)\n\n[a]'],
    ['<https://ok.example/"onmouseover="alert(1)>'],
  ])('makes no markup and no request of %s', (note) => {
    const out = html(note);
    expect(out).not.toMatch(/<(?!\/?(?:p|em|strong|del|code|pre|blockquote|ul|ol|li|a|br|table|thead|tbody|tr|th|td)[\s>])/u);
    expect(out).not.toMatch(/<[^>]*\s(?:on\w+|src|style)=/u);
    expect(out).not.toMatch(/href="(?!https?:|mailto:)/u);
  });

  it('shows markup as the text it is', () => {
    expect(html('<script>alert(1)</script>')).toContain('&#x3C;script>alert(1)');
  });

  it('makes neither headings nor anchors, which belong to the card', () => {
    expect(html('# Big\n\ntext[^1]\n\n[^1]: foot')).not.toMatch(/<h\d|id=/u);
  });

  it.each(['>', '[', '*', '- ', '`', '![', '[a](', '> - ', '<', '&'])('reads ten thousand of %s without breaking', (mark) => {
    expect(typeof html(mark.repeat(10_000))).toBe('string');
    expect(typeof html(Array.from({ length: 100 }, () => mark.repeat(33)).join('\n'))).toBe('string');
  });
});

describe('plain text', () => {
  it('has no controls and no marks that turn the reading order', () => {
    expect(plain('18\u202e g\u2066 a\u200f\u0000\u0007b\tc\ud800')).toBe('18 g ab c');
    expect(plain('crème brûlée תה 抹茶')).toBe('crème brûlée תה 抹茶');
  });
});
