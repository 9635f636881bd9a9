// A page that lies over the sheet until it is closed.

import type { ReactNode } from 'react';
import { Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { useWords } from '../words/words.ts';

/** The page, with a button that closes it. */
export function OverSheet({
  title,
  close,
  className = '',
  children,
}: {
  title: string;
  close: () => void;
  className?: string;
  children: ReactNode;
}) {
  const words = useWords().frame;
  return (
    <ModalOverlay
      className="overlay"
      isOpen
      isDismissable
      onOpenChange={(open) => {
        if (!open) close();
      }}
    >
      <Modal className="overlay-sheet">
        <Dialog className={`overlay-dialog ${className}`}>
          <Heading slot="title" className="heading">
            {title}
          </Heading>
          {children}
          <button type="button" onClick={close}>
            {words.close}
          </button>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
