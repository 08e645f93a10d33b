/** Turns a row's template into an editor's snippet, or into plain text. */

/** `heat <names> to <80> °C` as `heat ${1:names} to ${2:80} °C`; `<a|b>` becomes a choice. */
export function snippetOf(template: string): string {
  let place = 0;
  return replacePlaces(template, (inside) => {
    place += 1;
    const body = inside.includes('|') ? `|${inside.split('|').join(',')}|` : `:${inside}`;
    return `\${${place}${body}}`;
  });
}

/** The template as it would be typed, first choices taken. */
export function plainTemplate(template: string): string {
  return replacePlaces(template, (inside) => inside.split('|', 1)[0] ?? '');
}

function replacePlaces(template: string, replace: (inside: string) => string): string {
  return template.replace(/<([^<>]*)>/g, (_, inside: string) => replace(inside));
}
