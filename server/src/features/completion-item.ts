/** One proposal before it is put in the protocol's shape. */
import { CompletionItemKind } from 'vscode-languageserver';

export interface Proposal {
  readonly label: string;
  readonly kind: CompletionItemKind;
  /** Column where what it replaces starts. */
  readonly from: number;
  /** Inserted; the label where absent. A template's places stand in `<…>`. */
  readonly text?: string;
  readonly isTemplate?: boolean;
  /** Beside the label. */
  readonly note?: string;
  /** Lower stands higher. */
  readonly rank: number;
  /** What typed letters are held against, where that is not the label. */
  readonly filter?: string;
  /** For the documentation, worked out when asked for. */
  readonly about?: About;
}

/** What a proposal's documentation is about. */
export interface About {
  readonly what:
    | 'verb'
    | 'kind'
    | 'clause'
    | 'header'
    | 'block'
    | 'fact'
    | 'unit'
    | 'code'
    | 'sign'
    | 'tool'
    | 'medium'
    | 'peak'
    | 'phase'
    | 'state';
  readonly word: string;
}

type Given = Omit<Proposal, 'label' | 'from' | 'rank' | 'kind'>;

export const proposal = (label: string, from: number, rank: number, kind: CompletionItemKind, more: Given = {}): Proposal => ({
  label,
  from,
  rank,
  kind,
  ...more,
});

export { CompletionItemKind };
