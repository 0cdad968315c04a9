import type { ReactNode } from 'react';
import { Button as AriaButton } from 'react-aria-components';

interface ButtonProps {
  /** `act` does the next thing, `ghost` is quieter, `stop` halts or takes away. */
  readonly tone?: 'act' | 'ghost' | 'stop';
  readonly onPress?: () => void;
  readonly isDisabled?: boolean;
  /** Fills the width it is given. */
  readonly wide?: boolean;
  /** `submit` answers to the Enter key in a form. */
  readonly type?: 'button' | 'submit';
  /** Spoken name, where the children are only a sign. */
  readonly label?: string;
  readonly isPressed?: boolean;
  readonly children: ReactNode;
}

export function Button(props: ButtonProps) {
  const {
    tone = 'act',
    onPress,
    isDisabled = false,
    wide = false,
    type = 'button',
    label,
    isPressed,
  } = props;
  return (
    <AriaButton
      className={`btn ${tone}${wide ? ' wide' : ''}`}
      isDisabled={isDisabled}
      type={type}
      {...(onPress === undefined ? {} : { onPress })}
      {...(label === undefined ? {} : { 'aria-label': label })}
      {...(isPressed === undefined ? {} : { 'aria-pressed': isPressed })}
    >
      {props.children}
    </AriaButton>
  );
}
