import '../../styles/tasks.css';
import './stall.css';
import './sell.css';
import type { RecordOf } from '../../../records/record.ts';
import { hostName } from '../../../statements/account-name.ts';
import { stallTimeText } from '../../../statements/stall-time-text.ts';
import { useBook } from '../../book.ts';
import { Page } from '../../parts/page.tsx';
import type { ScreenProps } from '../../routes.ts';
import { say } from '../../say.ts';
import { NoStall } from './no-stall.tsx';
import { ReadyForm } from './ready-form.tsx';
import { SheetForm, type SheetPart, sheetParts } from './sheet-form.tsx';
import { StallSteps } from './stall-steps.tsx';
import { useSheet } from './use-sheet.ts';

/** One step of a stall's day: the readiness card, a count, goods that came, cash taken away. */
export function SheetPartScreen({ params }: ScreenProps) {
  const stall = useBook().ledger.setup.stalls.get(params.stall ?? '');
  const part = params.part ?? '';
  if (stall === undefined || (part !== 'ready' && !isPart(part))) return <NoStall />;
  return <Step key={`${stall.stall} ${part}`} stall={stall} part={part} />;
}

function isPart(part: string): part is SheetPart {
  return Object.hasOwn(sheetParts, part);
}

function Step(props: { readonly stall: RecordOf<'stall'>; readonly part: SheetPart | 'ready' }) {
  const { ledger } = useBook();
  const { stall, part } = props;
  const open = useSheet(stall);
  const { title, lead } =
    part === 'ready'
      ? { title: say`Ready to open`, lead: say`Look through it before anybody sells.` }
      : sheetParts[part];
  return (
    <Page
      title={title}
      above={
        <a href={`/stalls/${stall.stall}/sell`}>
          {say`Sales at ${hostName(ledger.setup, stall.host)}`}
        </a>
      }
      lead={`${stallTimeText(stall.starts, stall.ends, say)}. ${lead}`}
    >
      {!open.isRead ? null : part === 'ready' ? (
        <ReadyForm stall={stall} open={open} />
      ) : (
        <SheetForm stall={stall} open={open} part={part} />
      )}
      {/* What was tapped would be copied into a count. */}
      {part !== 'count' && <StallSteps stall={stall} open={open} />}
    </Page>
  );
}
