import { Modal, type ModalProps } from '@mantine/core';
import { createContext, use, useEffect, useRef, type ReactNode, type RefObject } from 'react';
import { useAskAboutLeaving } from '../api/asking.js';

/** What stands typed in a form, and how it is thrown away. */
interface Typed {
  readonly isUnsaved: boolean;
  readonly discard: () => void;
}

interface Around {
  readonly typed: RefObject<Typed | undefined>;
  /** Goes there, but asks first when something was typed that is not saved. */
  readonly leave: (there: () => void) => void;
}

/** A question that was answered before is gone from the screen by then, and the focus with it. */
const AFTER_QUESTION_MS = 300;

const DialogAround = createContext<Around | undefined>(undefined);

/**
 * A dialog with a form in it. Esc, a press beside it and its cross close it, but ask first when
 * something was typed that is not saved.
 */
export function FormDialog({
  isOpen = true,
  onClose,
  title,
  size = 'lg',
  children,
}: {
  isOpen?: boolean;
  onClose: () => void;
  title: ReactNode;
  size?: NonNullable<ModalProps['size']>;
  children: ReactNode;
}) {
  const typed = useRef<Typed>(undefined);
  const mayLeave = useAskAboutLeaving();
  const isAsking = useRef(false);
  const inside = useRef<HTMLDivElement>(null);
  // A press that puts other fields in the place of its button would leave the keys nowhere.
  const holdKeys = () => {
    if (document.activeElement === document.body) inside.current?.focus({ preventScroll: true });
  };
  const leave = async (there: () => void) => {
    // Esc that closes the question reaches this dialog as well.
    if (isAsking.current) return;
    if (typed.current?.isUnsaved) {
      isAsking.current = true;
      const isMeant = await mayLeave();
      setTimeout(() => (isAsking.current = false));
      if (!isMeant) return;
      typed.current?.discard();
      setTimeout(holdKeys, AFTER_QUESTION_MS);
    }
    there();
  };
  useEffect(holdKeys, [title]);
  // The component gives the focus back when it is closed, but not when it is taken away open.
  useEffect(() => {
    const before = document.activeElement;
    return () => {
      setTimeout(() => {
        if (before instanceof HTMLElement && document.activeElement === document.body)
          before.focus({ preventScroll: true });
      }, AFTER_QUESTION_MS);
    };
  }, []);
  return (
    <Modal
      opened={isOpen}
      onClose={() => void leave(onClose)}
      title={title}
      size={size}
      closeButtonProps={{ 'aria-label': 'Close' }}
    >
      <DialogAround value={{ typed, leave: (there) => void leave(there) }}>
        {isOpen && (
          <div ref={inside} tabIndex={-1} className="form-dialog">
            {children}
          </div>
        )}
      </DialogAround>
    </Modal>
  );
}

/** Tells the dialog around a form what is typed in it; the way back out of the form. */
export function useWayBack(form: Typed, onDone: () => void): () => void {
  const around = use(DialogAround);
  useEffect(() => {
    if (!around) return;
    around.typed.current = form;
    return () => {
      around.typed.current = undefined;
    };
  });
  return around ? () => around.leave(onDone) : onDone;
}
