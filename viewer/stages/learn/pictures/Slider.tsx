/** A slider with its value in words; the arrow keys step it. */
import { useId } from 'react';

interface SliderProps {
  readonly label: string;
  readonly value: number;
  readonly range: readonly [low: number, high: number];
  readonly step: number;
  /** what is shown and spoken for the value */
  readonly text: string;
  readonly onChange: (value: number) => void;
  readonly isDisabled?: boolean;
}

export function Slider({ label, value, range: [low, high], step, text, onChange, isDisabled = false }: SliderProps) {
  const id = useId();
  return (
    <div className="learn-slider">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="range"
        min={low}
        max={high}
        step={step}
        value={value}
        aria-valuetext={text}
        disabled={isDisabled}
        onChange={(event) => onChange(event.currentTarget.valueAsNumber)}
      />
      <span className="learn-slider-value" aria-hidden="true">
        {text}
      </span>
    </div>
  );
}
