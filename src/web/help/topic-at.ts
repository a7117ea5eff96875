/** The main tasks, each with help of its own in topics.ts. */
export const tasks = [
  'delivery',
  'handover',
  'return',
  'payment',
  'count',
  'stall',
  'share-out',
  'deposit',
  'online',
  'gift',
  'bank',
  'debits',
  'prizes',
  'why',
  'closing',
] as const;
export type Task = (typeof tasks)[number];

/** Pages where a task is done beside the form of its own name; a `*` stands for any one part. */
const PLACES: readonly (readonly [path: string, task: Task])[] = [
  ['/families/*', 'payment'],
  ['/count', 'count'],
  ['/count/*', 'count'],
  ['/add/stall-close', 'stall'],
  ['/stalls/*', 'stall'],
  ['/add/shareout', 'share-out'],
  ['/pools/*', 'share-out'],
  ['/add/bank-fee', 'bank'],
  ['/match/bank', 'bank'],
  ['/add/debit', 'debits'],
  ['/match/debits', 'debits'],
  ['/prizes', 'prizes'],
  ['/why', 'why'],
  ['/closing', 'closing'],
  ...tasks.map((task) => [`/add/${task}`, task] as const),
];

/** The task that a page is for; undefined where there is nothing to explain. */
export function topicAt(path: string): Task | undefined {
  const parts = path.split('/');
  const fits = (pattern: string): boolean => {
    const wanted = pattern.split('/');
    return (
      wanted.length === parts.length &&
      wanted.every((part, at) => part === '*' || part === parts[at])
    );
  };
  return PLACES.find(([pattern]) => fits(pattern))?.[1];
}
