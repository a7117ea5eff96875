import { address } from '../navigation.ts';
import { Unfolding } from '../parts/unfolding.tsx';
import { say } from '../say.ts';
import { topicAt } from './topic-at.ts';

const content = async () => (await import('./help-content.tsx')).HelpContent;

/** Help for the task of this page, folded away; its words are fetched when it is opened. */
export function HelpBeside() {
  const task = topicAt(address.value.path);
  if (task === undefined) return null;
  return <Unfolding key={task} words={say`How this works`} look="help no-print" load={content} />;
}
