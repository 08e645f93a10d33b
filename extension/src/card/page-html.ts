/** The card's page before there is a card: its frame, with nothing allowed but the extension's own script and style. */
import { Uri, type Webview } from 'vscode';

export function pageHtml(webview: Webview, extension: Uri): string {
  const file = (name: string) => webview.asWebviewUri(Uri.joinPath(extension, 'dist', name)).toString();
  const own = webview.cspSource;
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src ${own}; style-src ${own}; base-uri 'none'; form-action 'none'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Card</title>
<link rel="stylesheet" href="${file('card-page.css')}">
</head>
<body>
<header>
<form id="bar" aria-label="Card">
<label class="wide">Make <input id="for" type="text" spellcheck="false" autocomplete="off"></label>
<span id="choices"></span>
<label>Units <select id="units"><option value="metric">metric</option><option value="us">US</option></select></label>
<label>Language <select id="language"></select></label>
<button id="save" type="button">Save…</button>
</form>
<p id="problem" role="status" hidden></p>
</header>
<main id="card" hidden></main>
<script src="${file('card-page.js')}"></script>
</body>
</html>`;
}
