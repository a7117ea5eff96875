import { Field } from '../../parts/field.tsx';
import { say } from '../../say.ts';

export interface ChosenFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/**
 * A file to choose, or to drop: browsers take a file that is dropped on such a control, which is
 * drawn large for that. It is read here and goes nowhere else.
 */
export function FileZone(props: {
  readonly label: string;
  readonly hint: string;
  readonly accept: string;
  readonly onFile: (file: ChosenFile) => void;
}) {
  const take = async (file: File | undefined) => {
    if (file === undefined) return;
    props.onFile({ name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) });
  };
  return (
    <div class="no-print">
      <Field
        label={props.label}
        name="file"
        hint={`${props.hint} ${say`Choose it or drop it here; it stays in this browser.`}`}
        control={(control) => (
          <input
            {...control}
            class="drop-zone"
            type="file"
            accept={props.accept}
            onChange={(event) => void take(event.currentTarget.files?.[0])}
          />
        )}
      />
    </div>
  );
}
