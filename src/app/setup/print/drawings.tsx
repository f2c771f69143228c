import type { ReactNode } from "react";
import { circle, label, path } from "../../words/drawings/parts";

/** A drawing above its step, in units of about a pixel. The words below say all that it shows. */
const Drawing = ({ children }: { readonly children: ReactNode }) => (
  <svg viewBox="0 0 320 190" className="drawing w-full h-auto fill-none stroke-ink" aria-hidden="true">
    {children}
  </svg>
);

/** A sheet of paper, with a ruler laid along its check line. */
export const CheckLine = () => (
  <Drawing>
    {path("plate", "M40 14H280V150H40z")}
    {path("line", "M56 28h24v24h-24zM240 28h24v24h-24z")}
    {circle("line", 160, 66, 38)}
    {path("accent", "M90 128H230M90 122v12M230 122v12")}
    {path("plate", "M78 140H262V172H78z")}
    {path(
      "soft",
      "M90 140v14M104 140v7M118 140v7M132 140v7M146 140v7M160 140v10M174 140v7M188 140v7M202 140v7M216 140v7M230 140v14",
    )}
    {label(94, 168, "0")}
    {label(228, 168, "100 mm")}
  </Drawing>
);

/** The disc, cut out and glued on a lid, from the side. */
export const DiscOnLid = () => (
  <Drawing>
    {path("plate", "M150 24h20q10 0 10 10v40h-40v-40q0 -10 10 -10z")}
    {path("accent", "M60 78H260")}
    {path("plate", "M72 84H248V98H72z")}
    {path("line", "M72 98v14h10M248 98v14h-10")}
    {path("strong", "M160 98V132")}
    {path("plate", "M138 122h44v8h-44z")}
    {path("line", "M24 134H296")}
    {path("soft", "M190 44H214M262 76L282 60M250 92L276 102M184 126L226 122")}
    {label(238, 48, "knob")}
    {label(292, 56, "disc")}
    {label(290, 108, "lid")}
    {label(252, 126, "washer")}
    {label(160, 160, "pin through the middle")}
    {path("soft", "M160 148V134")}
  </Drawing>
);

/** The base sheet on the table, the disc on its circle, 0 at the triangle. */
export const DiscOnSheet = () => (
  <Drawing>
    {path("plate", "M78 10H242V174H78z")}
    {path("fill", "M86 18h22v22h-22zM212 18h22v22h-22zM86 144h22v22h-22zM212 144h22v22h-22z")}
    {path("plate", "M90 25h8v7h-8zM220 22h6v10h-6zM92 150h6v8h-6zM218 154h8v6h-8z")}
    {circle("line", 160, 94, 58)}
    {circle("soft", 160, 94, 40)}
    {circle("plate", 160, 94, 22)}
    {path("fill", "M160 34l-5 -12h10z")}
    {path("accent", "M160 38V50")}
    {label(160, 64, "0")}
    {path("soft", "M66 10l24 -4M254 10l-24 -4M66 174l24 4M254 174l-24 4")}
    {label(36, 96, "tape the")}
    {label(36, 110, "corners")}
  </Drawing>
);

/** The camera on a pile of books, looking down on the sheet, the lamp at the side. */
export const CameraOnBooks = () => (
  <Drawing>
    {path("line", "M12 168H308")}
    {path("plate", "M22 148h84v20h-84zM28 128h80v20h-80zM22 108h86v20h-86zM26 88h80v20h-80z")}
    {path("strong", "M70 78L152 46")}
    {path("plate", "M26 80h58v8h-58z")}
    {path("fill", "M146 40l18 8l-5 10l-18 -8z")}
    {path("dash", "M150 60L118 164M160 58L264 164")}
    {path("strong", "M118 164H264")}
    {path("accent", "M152 158h72")}
    {path("plate", "M176 146h24v12h-24z")}
    {path("line", "M262 30l30 14l-12 18zM286 54V40")}
    {path("soft", "M266 50L236 90M274 58L254 96")}
    {path("soft", "M292 92V164M288 98l4 -6l4 6M288 158l4 6l4 -6")}
    {label(300, 84, "30 cm")}
    {label(236, 26, "lamp at the side")}
    {label(118, 30, "camera")}
    {label(64, 186, "books or a stand")}
    {label(204, 186, "sheet, whole in the picture")}
  </Drawing>
);
