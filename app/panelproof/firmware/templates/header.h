/* {{ layout }}: what the panel shows, {{ width }} x {{ height }} pixels, proved by Panelproof for every value it can ever show.

   How to use it

     1. Include this header wherever its constants or functions are needed.
     2. In one source file, before that line:  #define OUR_IMPLEMENTATION
     3. Make a port of the type our_port: two functions of yours that write pixels, and a pointer for them.
{% for line in usage %}
     {{ loop.index + 3 }}. {{ line | join("\n        ") }}
{% endfor %}

{% if changes or bar_changes %}
   Define OUR_NO_CHANGES to leave out the functions that send only what differs.
{% endif %}
{% if guards %}
   Define OUR_NO_TEXT_FUNCTIONS to leave out the functions that print texts{{ ", and <stdio.h> with them" if prints }}.
{% endif %}
{% if passes or levels or rasters %}
   Where constants live apart from memory, define OUR_CONST, OUR_READ8, OUR_READ16 and OUR_READ32 before the
   implementation.
{% endif %}
{% if wide_colours %}
   Where the display has red and blue the other way round, or takes the low byte of a colour first, define
   OUR_BLUE_FIRST or OUR_LOW_BYTE_FIRST before the implementation: `run` gets its colours so.
{% endif %}
{% if passes or levels or rasters or wide_colours %}

{% endif %}
{% for name, value in facts %}
   {{ "%-10s" | format(name) }} {{ value }}
{% endfor %}

   Made by Panelproof; change the layout, not this file. Not a safety device: a proof of pixels, not of measurements.
   Local codes and licensed practice come first. */

#ifndef OUR_HEADER_
#define OUR_HEADER_

#include <stddef.h>
#include <stdint.h>

/* SHA-256 of the layout's file */
#define OUR_LAYOUT_DIGEST "{{ digest }}"
{% for block in blocks %}

{% if block.title.startswith("Screen ") %}
/* ---- {{ block.title }} {{ "-" * (107 - block.title | length) }} */

{% else %}
/* {{ block.title }} */
{% endif %}
{% for line in block.lines() %}
{{ line }}
{% endfor %}
{% endfor %}

/* ---- Functions --------------------------------------------------------------------------------------------- */

/* How pixels reach the glass. `window` sets a rectangle; the runs after it fill it exactly, row by row from its top
   left corner, each run being `count` pixels of one colour, which may go on into the next row. */
typedef struct our_port {
    void (*window)(void *context, uint16_t x, uint16_t y, uint16_t width, uint16_t height);
    void (*run)(void *context, uint16_t colour, uint32_t count);
    void *context;
} our_port;
{% for screen in screens if screen.members %}

/* What the screen `{{ screen.name }}` shows: {{ screen.said }}. */
typedef struct {{ screen.values }} {
{% for line in screen.members %}
    {{ line }}
{% endfor %}
} {{ screen.values }};
{% endfor %}

#ifdef __cplusplus
extern "C" {
#endif
{% if whole %}

/* The frame of this panel is composed in memory and sent at once, so there are only functions that draw a whole screen:
   draw into the frame, then send it. */
{% elif screens %}

{% for line in about %}
{{ line }}
{% endfor %}
{% endif %}
{% for screen in screens %}
void {{ screen.draw }};
{% for part in screen.shown if not whole %}
void {{ part.update }};
{% endfor %}
{% endfor %}
{% if changes or bar_changes %}

#ifndef OUR_NO_CHANGES
/* The same, of a part that shows `former` already: only pixels that differ are sent, with a few others where that takes
   fewer bytes. Give the very text or state that was drawn last; NULL, or a state that there is none of, where that is
   not known, and all is drawn.{{ " Of a level bar give the value drawn last; where it is not known, update it." if bar_changes }} */
{% for screen in screens %}
{% for part in screen.shown if part.change %}
void {{ part.change }};
{% endfor %}
{% endfor %}
#endif
{% endif %}
{% if guards %}

#ifndef OUR_NO_TEXT_FUNCTIONS
/* Write the text of a field into a buffer of its ..._TEXT_BYTES and return its bytes, terminator not counted. A value
   outside what the proof covers, or not a number, gives the text named behind `else`. Where a field has none the
   result is -1 and the buffer is as it was: do not update the field then.{{
   "\n   Those called ..._scaled take a real as a whole number of its last places: 1234 for 123.4. Where a double has\n   32 bits only, the others show the nearest number that it can hold." if guards | selectattr("scaled") | list }} */
{% for guard in guards %}

/* {{ guard.accepted | join("; ") | default("no value", true) }}{{ "; else " ~ guard.otherwise if guard.parameters }} */
{{ guard.declaration }};
{% endfor %}
#endif
{% endif %}

#ifdef __cplusplus
}
#endif

#endif /* OUR_HEADER_ */

#if defined(OUR_IMPLEMENTATION) && !defined(OUR_IMPLEMENTED_)
#define OUR_IMPLEMENTED_
{% if screens %}

{% endif %}
{% include "data.c" %}
{% if screens %}
{% if passes %}

{% endif %}
{% if passes or fills or levels or rasters %}
{% include "drawing.c" %}

{% endif %}
{% if levels %}
{% include "meters.c" %}

{% endif %}
{% if rasters %}
{% include "pictures.c" %}

{% endif %}
/* ---- Screens ----------------------------------------------------------------------------------------------- */

{% for screen in screens %}
void {{ screen.draw }}
{
{% for line in screen.body %}
    {{ line }}
{% endfor %}
}

{% for part in screen.shown if not whole %}
void {{ part.update }}
{
{% for line in part.call %}
    {{ line }}
{% endfor %}
}

{% endfor %}
{% endfor %}
{% if changes or bar_changes %}
#ifndef OUR_NO_CHANGES
{% for screen in screens %}
{% for part in screen.shown if part.change %}
void {{ part.change }}
{
{% for line in part.change_call %}
    {{ line }}
{% endfor %}
}

{% endfor %}
{% endfor %}
#endif /* OUR_NO_CHANGES */

{% endif %}
{% endif %}
{% if guards %}
{% include "texts.c" %}

{% endif %}
#endif /* OUR_IMPLEMENTATION */
