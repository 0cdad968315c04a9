import type { ReactNode } from 'react';
import { Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { Button } from './Button.tsx';

interface SheetProps {
  readonly title: string;
  readonly isOpen: boolean;
  readonly onClose: () => void;
  /** For a sheet as wide as a page, such as a drawing. */
  readonly isWide?: boolean;
  readonly children: ReactNode;
}

/** Something that needs an answer before the page goes on; the whole screen on a phone. */
export function Sheet({ title, isOpen, onClose, isWide = false, children }: SheetProps) {
  return (
    <ModalOverlay
      className="veil"
      isOpen={isOpen}
      onOpenChange={(open) => {
        if (!open) onClose();
      }}
    >
      <Modal className={`sheet${isWide ? ' broad' : ''}`}>
        <Dialog className="sheetBody">
          <div className="sheetTop">
            <Heading slot="title" level={2}>
              {title}
            </Heading>
            <Button tone="ghost" onPress={onClose} label="Close">
              ✕
            </Button>
          </div>
          {children}
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
