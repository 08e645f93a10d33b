/** Words of a recipe's method whose meaning is plain: verbs, what a sentence may leave unsaid, signs; one row a word. */

/** First words of an instruction → verb. Only such as mean one verb whatever follows. */
export const verbsBySaying: readonly (readonly [string, string])[] = [
  // English
  ...[
    'mix',
    'whisk',
    'stir',
    'add',
    'combine',
    'knead',
    'sift',
    'heat',
    'boil',
    'melt',
    'bake',
    'toast',
    'cool',
    'chill',
    'freeze',
    'rest',
    'bloom',
    'dissolve',
    'infuse',
    'strain',
    'temper',
    'whip',
    'fold',
    'blend',
    'pour',
    'pipe',
    'spread',
    'unmould',
    'garnish',
    'dust',
    'cook',
    'reduce',
    'cream',
    'churn',
    'thaw',
    'proof',
  ].map((word) => [word, word] as const),
  ['beat', 'whisk'],
  ['warm', 'heat'],
  ['refrigerate', 'chill'],
  ['steep', 'infuse'],
  ['defrost', 'thaw'],
  ['unmold', 'unmould'],
  ['roast', 'toast'],
  ['leave to cool', 'cool'],
  ['let cool', 'cool'],
  ['allow to cool', 'cool'],
  ['whisk in', 'add'],
  ['stir in', 'add'],
  ['mix in', 'add'],
  ['beat in', 'add'],
  ['fold in', 'fold'],
  // French, as an order or in the infinitive
  ...['chauffer', 'chauffez', 'faire chauffer', 'faites chauffer'].map((word) => [word, 'heat'] as const),
  ...['fouetter', 'fouettez'].map((word) => [word, 'whisk'] as const),
  ...['mélanger', 'mélangez'].map((word) => [word, 'mix'] as const),
  ...['ajouter', 'ajoutez'].map((word) => [word, 'add'] as const),
  ...['tamiser', 'tamisez'].map((word) => [word, 'sift'] as const),
  ...['faire fondre', 'faites fondre'].map((word) => [word, 'melt'] as const),
  ...['refroidir', 'laisser refroidir', 'laissez refroidir'].map((word) => [word, 'cool'] as const),
  ...['enfourner', 'enfournez'].map((word) => [word, 'bake'] as const),
];

/** `bring … to the boil`: the verb stands around what it acts on. */
export const around: readonly { readonly before: RegExp; readonly after: RegExp; readonly verb: string }[] = [
  { before: /^bring /iu, after: / to (?:the|a) boil$/iu, verb: 'boil' },
  { before: /^(?:porter|portez) /iu, after: / à ébullition$/iu, verb: 'boil' },
  { before: /^(?:let|leave|allow) /iu, after: / (?:to )?cool(?= to |$)/iu, verb: 'cool' },
];

/** Words that may be left out of the step, since the whole sentence then stands below it as a note. */
export const fillers: readonly RegExp[] = [
  /\b(?:gently|gradually|slowly|carefully|thoroughly|together|immediately|briefly|quickly|well|then|now|next|finally|meanwhile|about|approximately|roughly|at least|all)\b/iu,
  /\b(?:doucement|délicatement|bien|ensemble|environ|puis|ensuite)\b/iu,
  /\bin an? (?:small |medium |large |heavy |clean |heavy-based |stainless |mixing )*(?:saucepan|pan|pot|bowl|jug)\b/iu,
  /\bdans une? (?:petite |grande )?(?:casserole|bol|saladier|jatte)\b/iu,
  /\bthrough a (?:fine )?(?:sieve|strainer)\b/iu,
  /\bon the (?:hob|stove)\b/iu,
];

export const media: readonly (readonly [RegExp, string])[] = [
  [/\b(?:in|over) (?:the|an|a) ice(?:[ -]water)? bath\b/iu, 'in ice bath'],
  [/\b(?:in|over) (?:the|a) (?:water[ -]bath|bain[ -]marie|double boiler)\b/iu, 'in water bath'],
  [/\bau bain[ -]marie\b/iu, 'in water bath'],
  [/\bin (?:the|a) (?:fridge|refrigerator)\b/iu, 'in fridge'],
  [/\bau (?:frais|réfrigérateur|frigo)\b/iu, 'in fridge'],
  [/\bin (?:the|a) freezer\b/iu, 'in freezer'],
  [/\bau congélateur\b/iu, 'in freezer'],
];

/** What may stand between two parties. */
export const joiners = /^(?:,|and|with|et|avec|und|\+|&)$/iu;

/** Words before a party that take all of it; `a`, `some`, `du` may take a part and are not understood. */
export const articles = /^(?:the|all|your|this|le|la|les|l'|hot|warm|cold|cooled|chilled|warmed|melted)$/iu;

export const pronouns = /^(?:it|them|everything|the mixture|the mix|this|le tout|le mélange)$/iu;
