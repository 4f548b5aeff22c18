import type { ComponentProps } from 'react';
import './button.css';

interface ButtonProps extends Omit<ComponentProps<'button'>, 'type'> {
  /** What one came for, or what stands beside it without a frame. */
  readonly theme?: 'primary' | 'tertiary';
}

/** A button that does what `onClick` says; it never sends the form around it. */
export function Button({ theme, className, ...rest }: ButtonProps) {
  return <button {...rest} type="button" className={['rc-button', theme, className].filter(Boolean).join(' ')} />;
}
