/** What the extension adds to the editor once a formula is open: commands, cards, the status item. All the knowing is the server's. */
import { commands, type ExtensionContext } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { Cards } from './card/cards.ts';
import { Changes } from './commands/compare.ts';
import { explainFault } from './commands/explain.ts';
import { openSample } from './commands/sample.ts';
import { scaleFormula } from './commands/scale.ts';
import { takeComponent } from './commands/take.ts';
import { Status } from './status.ts';

export async function extend(context: ExtensionContext, client: BaseLanguageClient): Promise<void> {
  const started = client.start();
  const cards = new Cards(context.extensionUri, client, started);
  const changes = new Changes(client);
  const register = (name: string, run: (argument?: never) => unknown) =>
    context.subscriptions.push(
      commands.registerCommand(`nappe.${name}`, async (argument?: never) => {
        await started;
        return run(argument);
      }),
    );
  register('openCard', (where) => cards.open(where));
  register('exportCard', () => cards.export());
  register('scaleFormula', () => scaleFormula(client));
  register('compareWithCommit', () => changes.show());
  register('takeComponent', () => takeComponent(client));
  register('explainFault', () => explainFault());
  register('openSample', () => openSample(context.extensionUri));
  context.subscriptions.push(client, cards, changes);
  await started;
  context.subscriptions.push(new Status(client));
}
