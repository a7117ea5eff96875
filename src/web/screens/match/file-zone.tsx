import { useState } from 'preact/hooks';
import { Field } from '../../parts/field.tsx';

export interface ChosenFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** A file to choose or to drop. It is read here and goes nowhere else. */
export function FileZone(props: {
  readonly label: string;
  readonly hint: string;
  readonly accept: string;
  readonly onFile: (file: ChosenFile) => void;
}) {
  const [isOver, setOver] = useState(false);
  const take = async (file: File | undefined) => {
    setOver(false);
    if (file === undefined) return;
    props.onFile({ name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) });
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: dropping is beside the control, not for it
    <div
      class={isOver ? 'drop-zone is-over no-print' : 'drop-zone no-print'}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={(event) => {
        event.preventDefault();
        void take(event.dataTransfer?.files[0]);
      }}
    >
      <Field
        label={props.label}
        name="file"
        hint={props.hint}
        control={(control) => (
          <input
            {...control}
            type="file"
            accept={props.accept}
            onChange={(event) => void take(event.currentTarget.files?.[0])}
          />
        )}
      />
      <p class="soft">Or drop it here. It stays in this browser.</p>
    </div>
  );
}
