import * as z from "zod/mini";
import { rulesOf, text } from "../../lock/fieldSchemas";
import { SCHOOL_WORDS } from "../schoolWords";
import { isReadableName, isReadableText } from "./readable";

const must = rulesOf(SCHOOL_WORDS);

/** A name that others are shown: of a person, a class, a bench, a school. @see isReadableName */
export const shownName = (most: number, least = 1) =>
  text(most, least).check(z.refine(isReadableName, must("unreadable-name")));

/** What somebody writes for others, on several lines. */
export const shownText = (most: number) => text(most).check(z.refine(isReadableText, must("hidden-characters")));
