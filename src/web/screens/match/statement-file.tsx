import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { FileRefusal } from '../../../intake/table/file-refusal.ts';
import { Button } from '../../parts/button.tsx';
import { Notice } from '../../parts/notice.tsx';
import { say } from '../../say.ts';
import { type ColumnRole, ColumnsForm, type ColumnsTyped } from './columns-form.tsx';
import { type ChosenFile, FileZone } from './file-zone.tsx';
import { refusalWords } from './refusal-words.ts';

/** What is read of a file, and its columns where it is a table. */
export interface ReadOf<F> {
  readonly file: F | undefined;
  readonly refusal: FileRefusal | undefined;
  readonly heads: readonly string[];
  readonly start: ColumnsTyped;
}

/** A statement's file: chosen or dropped, its columns looked over, then what is shown of it. */
export function StatementFile<F>(props: {
  readonly label: string;
  readonly hint: string;
  readonly accept: string;
  readonly roles: readonly ColumnRole[];
  readonly read: (file: ChosenFile, typed?: ColumnsTyped) => Promise<ReadOf<F>>;
  readonly children: (file: F) => ComponentChildren;
}) {
  const [chosen, setChosen] = useState<ChosenFile>();
  const [read, setRead] = useState<ReadOf<F>>();
  const readFile = async (file: ChosenFile, typed?: ColumnsTyped) => {
    setRead(await props.read(file, typed));
    setChosen(file);
  };
  return (
    <>
      <FileZone {...props} onFile={(file) => void readFile(file)} />
      {read?.refusal && chosen && (
        <Notice tone="stop" title={say`Nothing of this file was taken.`}>
          <p>{refusalWords(read.refusal, chosen.name)}</p>
        </Notice>
      )}
      {read && chosen && read.heads.length > 0 && (
        <Columns
          key={`${chosen.name} ${read.file === undefined}`}
          isOpen={read.file === undefined}
          heads={read.heads}
          start={read.start}
          roles={props.roles}
          onSaid={(typed) => void readFile(chosen, typed)}
        />
      )}
      {read?.file !== undefined && props.children(read.file)}
    </>
  );
}

function Columns(props: Parameters<typeof ColumnsForm>[0] & { readonly isOpen: boolean }) {
  const [isOpen, setOpen] = useState(props.isOpen);
  if (isOpen) return <ColumnsForm {...props} />;
  return (
    <p class="no-print">
      <Button quiet onClick={() => setOpen(true)}>
        {say`Look over the columns`}
      </Button>
    </p>
  );
}
