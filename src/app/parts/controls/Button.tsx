import type { ComponentProps } from "react";

/** A button that acts and sends no form. @param className - looks beyond those of every button */
export const Button = ({ className = "", ...rest }: ComponentProps<"button">) => (
  <button type="button" className={className === "" ? "button" : `button ${className}`} {...rest} />
);
