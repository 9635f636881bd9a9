// The page over the sheet on which codes are shown and read.

import '../../styles/codes.css';
import type { ReactNode } from 'react';
import { Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { useWords } from '../../words/words.ts';

/** The page, with a button that closes it. */
export function CodesDialog({
  title,
  close,
  children,
}: {
  title: string;
  close: () => void;
  children: ReactNode;
}) {
  const words = useWords().codes;
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
        <Dialog className="overlay-dialog codes">
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
