/** `nappe completion`: a script for bash, zsh or fish, made from the commands' own options. */
import { Argument, Command, type Option } from 'commander';
import { commands } from './table.ts';
import { print } from './terminal.ts';

interface Completed {
  readonly name: string;
  readonly summary: string;
  readonly options: readonly Option[];
  /** Words for its argument; none where a file is wanted. */
  readonly words: readonly string[];
}

const scripts: Record<string, (commands: readonly Completed[]) => string> = { bash, zsh, fish };

export function define(command: Command): void {
  command
    .addArgument(new Argument('<shell>', 'the shell you use').choices(Object.keys(scripts)))
    .addHelpText(
      'after',
      `
To have it in every new shell:
  bash   nappe completion bash >> ~/.bashrc
  zsh    nappe completion zsh  >> ~/.zshrc     (after the line with compinit)
  fish   nappe completion fish > ~/.config/fish/completions/nappe.fish`,
    )
    .action(async (shell: string) => {
      print((scripts[shell] as (typeof scripts)[string])(await all()));
    });
}

async function all(): Promise<Completed[]> {
  return Promise.all(
    commands
      .filter(({ hidden }) => !hidden)
      .map(async ({ name, summary, load }) => {
        const command = new Command(name);
        (await load()).define(command);
        const words = command.registeredArguments.flatMap(({ argChoices }) => argChoices ?? []);
        return { name, summary, options: command.options, words };
      }),
  );
}

function bash(list: readonly Completed[]): string {
  const valued = list.flatMap(({ name, options }) =>
    options
      .filter(({ argChoices }) => argChoices)
      .map((one) => `    ${name}:${one.long}) words="${one.argChoices?.join(' ')}" ;;`),
  );
  const cases = list.map(({ name, options, words }) => `    ${name}) words="${[...flags(options), ...words].join(' ')}" ;;`);
  return `# bash completion for nappe
_nappe() {
  local current="\${COMP_WORDS[COMP_CWORD]}" previous="\${COMP_WORDS[COMP_CWORD-1]}" command="\${COMP_WORDS[1]}" words=""
  if [ "$COMP_CWORD" -eq 1 ]; then
    COMPREPLY=($(compgen -W "${list.map(({ name }) => name).join(' ')} --help --version" -- "$current"))
    return
  fi
  case "$command:$previous" in
${valued.join('\n')}
  esac
  if [ -n "$words" ]; then
    COMPREPLY=($(compgen -W "$words" -- "$current"))
    return
  fi
  case "$command" in
${cases.join('\n')}
  esac
  COMPREPLY=($(compgen -W "$words" -- "$current"))
  if [ "\${#COMPREPLY[@]}" -eq 0 ]; then compopt -o filenames 2>/dev/null; COMPREPLY=($(compgen -f -- "$current")); fi
}
complete -F _nappe nappe
`;
}

function zsh(list: readonly Completed[]): string {
  const described = list.map(({ name, summary }) => `    ${quoted(`${name}:${summary}`)}`);
  const cases = list.map(({ name, options, words }) => {
    const specs = options.map(
      (one) => `        ${quoted(`${one.long}[${one.description.replace(/[[\]:]/g, ' ')}]${zshValue(one)}`)}`,
    );
    const rest = words.length > 0 ? `'*:word:(${words.join(' ')})'` : `'*:file:_files'`;
    return `    ${name})\n      _arguments \\\n${[...specs, `        ${rest}`].join(' \\\n')}\n      ;;`;
  });
  return `#compdef nappe
_nappe() {
  local -a commands
  commands=(
${described.join('\n')}
  )
  if (( CURRENT == 2 )); then
    _describe command commands
    return
  fi
  local command=$words[2]
  shift words
  (( CURRENT-- ))
  case $command in
${cases.join('\n')}
  esac
}
compdef _nappe nappe
`;
}

function fish(list: readonly Completed[]): string {
  const lines = list.flatMap(({ name, summary, options, words }) => [
    `complete -c nappe -n __fish_use_subcommand -f -a ${name} -d ${quoted(summary)}`,
    ...options.map(
      (one) => `complete -c nappe -n '__fish_seen_subcommand_from ${name}' ${fishFlags(one)} -d ${quoted(one.description)}`,
    ),
    ...(words.length > 0 ? [`complete -c nappe -n '__fish_seen_subcommand_from ${name}' -f -a ${quoted(words.join(' '))}`] : []),
  ]);
  return `# fish completion for nappe\n${lines.join('\n')}\n`;
}

const flags = (options: readonly Option[]): string[] => [...options.flatMap(({ long }) => long ?? []), '--help'];

const takesValue = (option: Option): boolean => option.required || option.optional;

function zshValue(option: Option): string {
  if (!takesValue(option)) return '';
  return option.argChoices ? `:value:(${option.argChoices.join(' ')})` : ':value:_files';
}

function fishFlags(option: Option): string {
  const names = [option.short ? `-s ${option.short.slice(1)}` : '', `-l ${option.long?.slice(2)}`].join(' ').trim();
  if (!takesValue(option)) return names;
  return option.argChoices ? `${names} -x -a ${quoted(option.argChoices.join(' '))}` : `${names} -r`;
}

const quoted = (text: string): string => `'${text.replaceAll("'", "'\\''")}'`;
