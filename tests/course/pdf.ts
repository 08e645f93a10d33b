/** What a PDF of Chromium says of itself: its pages, and on which of them each heading stands. */

export interface Heading {
  readonly title: string;
  /** From 1. */
  readonly page: number;
}

/** From a PDF made with an outline; its objects are not compressed (ISO 32000-1, 7.7.3 and 12.3.3). In the order of the document. */
export function headingsOf(pdf: Buffer): { readonly pages: number; readonly headings: readonly Heading[] } {
  const text = pdf.toString('latin1');
  const objects = new Map([...text.matchAll(/(\d+) 0 obj\s([\s\S]*?)endobj/gu)].map(([, id, body]) => [Number(id), body ?? '']));
  const order: number[] = [];
  const walk = (id: number): void => {
    const body = objects.get(id) ?? '';
    const kids = /\/Kids\s*\[([^\]]*)\]/u.exec(body)?.[1];
    if (kids === undefined) order.push(id);
    else for (const [, kid] of kids.matchAll(/(\d+) 0 R/gu)) walk(Number(kid));
  };
  const root = [...objects].find(([, body]) => /\/Type\s*\/Pages\b/u.test(body) && !/\/Parent\b/u.test(body));
  if (root) walk(root[0]);
  const headings: Heading[] = [];
  const read = (id: number | null): void => {
    for (let at = id; at !== null; ) {
      const body = objects.get(at) ?? '';
      const page = /\/Dest\s*\[(\d+) 0 R/u.exec(body)?.[1];
      if (page !== undefined) headings.push({ title: titleIn(body), page: order.indexOf(Number(page)) + 1 });
      read(linkIn(body, 'First'));
      at = linkIn(body, 'Next');
    }
  };
  const outlines = [...objects].find(([, body]) => /\/Type\s*\/Outlines\b/u.test(body));
  read(outlines ? linkIn(outlines[1], 'First') : null);
  return { pages: order.length, headings };
}

function linkIn(body: string, name: string): number | null {
  const id = new RegExp(`/${name}\\s+(\\d+) 0 R`, 'u').exec(body)?.[1];
  return id === undefined ? null : Number(id);
}

function titleIn(body: string): string {
  const hex = /\/Title\s*<([0-9A-Fa-f]+)>/u.exec(body)?.[1];
  if (hex === undefined) return (/\/Title\s*\(((?:\\.|[^\\)])*)\)/u.exec(body)?.[1] ?? '').replace(/\\(.)/gu, '$1');
  const units = hex.match(/.{4}/gu) ?? [];
  return String.fromCharCode(...units.slice(1).map((unit) => Number.parseInt(unit, 16)));
}
