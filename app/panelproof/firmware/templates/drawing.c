/* ---- Drawing: one pass over a text or an icon, every pixel painted once, no buffer ------------------------- */

{% if px == "int" %}
typedef int our_px_; /* a place in pixels; 16 bits are enough for every text of this layout */
{% else %}
typedef int32_t our_px_; /* a place in pixels; texts of this layout are too long for 16 bits */
{% endif %}
typedef {{ count_type }} our_count_; /* pixels of the panel */

static void our_window_(const our_port *port, our_px_ x, our_px_ y, our_px_ width, our_px_ height)
{
    port->window(port->context, (uint16_t)x, (uint16_t)y, (uint16_t)width, (uint16_t)height);
}

static void our_run_(const our_port *port, uint16_t colour, our_count_ count)
{
{% if wide_colours %}
#ifdef OUR_BLUE_FIRST
    colour = (uint16_t)(colour >> 11 | (colour & 0x07E0u) | (colour & 31u) << 11);
#endif
#ifdef OUR_LOW_BYTE_FIRST
    colour = (uint16_t)(colour >> 8 | (colour & 0xFFu) << 8);
#endif
{% endif %}
    port->run(port->context, colour, count);
}
{% if fills or boxes %}

/* Fill a rectangle that lies on the panel. */
static void our_fill_(const our_port *port, our_px_ x, our_px_ y, our_px_ width, our_px_ height, uint16_t colour)
{
    const our_count_ count = (our_count_)((our_count_)width * (our_count_)height);

    if (count) {
        our_window_(port, x, y, width, height);
        our_run_(port, colour, count);
    }
}
{% if fills %}

/* Fill what lies on the panel of a rectangle given by constants. */
#define OUR_FILL_(port, x, y, width, height, colour)                                                       \
    our_fill_(port, OUR_ACROSS_(x), OUR_DOWN_(y), OUR_ACROSS_((x) + (width)) - OUR_ACROSS_(x),             \
              OUR_DOWN_((y) + (height)) - OUR_DOWN_(y), colour)
{% endif %}
{% endif %}
{% if passes or levels %}

/* Fetch a constant into memory. */
static void our_load_(void *to, const void *from, uint8_t bytes)
{
    while (bytes--)
        ((uint8_t *)to)[bytes] = OUR_READ8((const uint8_t *)from + bytes);
}
{% endif %}
{% if passes %}

typedef {{ bit_type }} our_bit_; /* a bit within one bitmap */
#define OUR_FULL_(part) ((1u << OUR_DEPTH_(part)) - 1u) /* the level of pure ink */
{% if overlaps %}
#define OUR_REACH_ ({{ reach }}) /* a later glyph begins no nearer to a pen, in pixels */
{% endif %}

typedef struct our_walk_ {   /* a place in a text */
    our_glyph_ glyph;        /* the glyph at the pen */
    {{ place_type }} place;  /* its place among all, from 1; 0 for none */
    our_px_ pen;
    const char *next;
} our_walk_;

typedef struct our_pass_ {
    our_walk_ walk, first; /* where it is; where it begins: before the first glyph */
    our_part_ part;
    uint16_t ink, colour; /* of the part; of the run that is not yet sent */
    our_count_ count;     /* length of that run */
    our_px_ x, y;         /* where the next pixel goes */
    const char *end;
    const our_port *port;
{% if repeats %}
    unsigned bits; /* where the pixels of the glyph's rows begin */
{% endif %}
{% if runs %}
    uint8_t level; /* of the run before it */
    {{ half_type }} half, row_end; /* the next half of a byte of the bitmaps; where the row ends */
{% endif %}
{% if modes %}
    uint8_t opaque; /* whether ground is painted too */
{% endif %}
{% if fixed %}
    uint8_t fixed; /* whether the text lies among the constants */
{% endif %}
{% if changes %}
#ifndef OUR_NO_CHANGES
    uint8_t looking; /* whether pixels are gathered in `seen`, the last lowest, and not painted */
    {{ seen_type }} seen;
#endif
{% endif %}
} our_pass_;

{% if modes %}
#define OUR_OPAQUE_(pass) ((pass)->opaque)
{% else %}
#define OUR_OPAQUE_(pass) {{ 1 if opaque else 0 }}
{% endif %}
{% if fixed and fields_too %}
#define OUR_CHAR_(pass, at) \
    (OUR_APART_ && (pass)->fixed ? (uint8_t)OUR_READ8(at) : *(const uint8_t *)(at))
{% elif fixed %}
#define OUR_CHAR_(pass, at) OUR_READ8(at)
{% else %}
#define OUR_CHAR_(pass, at) (*(const uint8_t *)(at))
{% endif %}

/* Return the place of a code in an ascending table, counted from 1, or 0 where it is not there. */
static unsigned our_find_(const {{ code_type }} *codes, unsigned count, {{ code_type }} code)
{
    unsigned low = 0, half;

    while (count > 1) {
        half = count / 2;
        if (OUR_READ{{ code_bits }}(codes + low + half) <= code)
            low += half;
        count -= half;
    }
    return OUR_READ{{ code_bits }}(codes + low) == code ? low + 1 : 0;
}

/* Go on to the next glyph of the text; 0 at its end. A character is its bytes, one after the other as a number;
   those without a glyph are passed over{{ ", and break the kerning of their neighbours" if kerning }}. */
static unsigned our_step_(our_pass_ *pass)
{
    our_walk_ *const walk = &pass->walk;
    unsigned place;

    walk->pen += walk->glyph.advance;
    while (walk->next != pass->end) {
        {{ code_type }} code = OUR_CHAR_(pass, walk->next++);
{% if lead == 2 %}

        if (code >= 0xC0 && walk->next != pass->end && (OUR_CHAR_(pass, walk->next) & 0xC0) == 0x80)
            code = ({{ code_type }})(code << 8 | OUR_CHAR_(pass, walk->next++));
{% elif lead > 2 %}
        uint8_t lead = (uint8_t)code;

        for (; lead >= 0xC0 && walk->next != pass->end && (OUR_CHAR_(pass, walk->next) & 0xC0) == 0x80;
             lead = (uint8_t)(lead << 1))
            code = code << 8 | OUR_CHAR_(pass, walk->next++);
{% endif %}
        place = our_find_(our_codes_ + OUR_FIRST_(&pass->part), OUR_GLYPHS_(&pass->part), code);
        if (place) {
            place += OUR_FIRST_(&pass->part);
            our_load_(&walk->glyph, our_glyphs_ + place - 1, sizeof walk->glyph);
{% if kerning %}
            code = ({{ code_type }})((unsigned)walk->place << {{ place_bits }} | place);
{% endif %}
            walk->place = ({{ place_type }})place;
{% if kerning %}
            place = our_find_(our_pairs_, {{ pair_count }}, code);
            if (place)
                walk->pen += ({{ kern_holds }}_t)OUR_READ{{ kern_bits }}(our_kerns_ + place - 1);
{% endif %}
            return 1;
        }
{% if kerning %}
        walk->place = 0;
{% endif %}
    }
    return 0;
}

/* Send the run that is not yet sent. */
static void our_flush_(our_pass_ *pass)
{
    if (pass->count) {
{% if modes or not opaque %}
        if (!OUR_OPAQUE_(pass))
            our_window_(pass->port, pass->x - (our_px_)pass->count, pass->y, (our_px_)pass->count, 1);
{% endif %}
        our_run_(pass->port, pass->colour, pass->count);
    }
    pass->count = 0;
}

/* Paint the row up to x with one level; neighbours of one colour become one run. */
static void our_to_(our_pass_ *pass, our_px_ x, unsigned level)
{
    uint16_t colour = level ? pass->ink : OUR_GROUND_(&pass->part);

    if (x > (our_px_)pass->part.right)
        x = pass->part.right;
    if (x <= pass->x)
        return;
{% if changes %}
#ifndef OUR_NO_CHANGES
    if (pass->looking) {
        for (; pass->x < x; ++pass->x)
            pass->seen = ({{ seen_type }})((pass->seen << OUR_DEPTH_(&pass->part)) | ({{ seen_type }})level);
        return;
    }
#endif
{% endif %}
{% if ramps %}
    if (level && level != OUR_FULL_(&pass->part))
        colour = OUR_READ16(&our_ramps_[OUR_RAMP_(&pass->part)][level - 1]);
{% endif %}
{% if modes or not opaque %}
    if (colour != pass->colour || (!level && !OUR_OPAQUE_(pass)))
        our_flush_(pass);
    if (level || OUR_OPAQUE_(pass))
        pass->count = (our_count_)(pass->count + (our_count_)(x - pass->x));
{% else %}
    if (colour != pass->colour)
        our_flush_(pass);
    pass->count = (our_count_)(pass->count + (our_count_)(x - pass->x));
{% endif %}
    pass->colour = colour;
    pass->x = x;
}

{% if rows %}
{% if repeats %}
/* Find the pixels of the glyph at the pen, and return which of the rows there a row of it is. */
static unsigned our_kept_(our_pass_ *pass, unsigned row)
{
    const uint8_t *flags = our_bits_ + pass->walk.glyph.first_byte;
    unsigned n, kept = 0;

    pass->bits = pass->walk.glyph.first_byte;
    if (OUR_FORM_(&pass->part) != OUR_AS_REPEATS_)
        return row;
    pass->bits += ((unsigned)pass->walk.glyph.height + 7u) >> 3;
    for (n = 1; n <= row; ++n)
        kept += (((unsigned)OUR_READ8(flags + (n >> 3)) >> (n & 7)) & 1u) ^ 1u;
    return kept;
}

{% endif %}
/* Return the level of a pixel of the glyph at the pen. */
static unsigned our_level_(const our_pass_ *pass, our_bit_ pixel)
{
    const uint8_t *bits = our_bits_ + {{ "pass->bits" if repeats else "pass->walk.glyph.first_byte" }};

    pixel *= OUR_DEPTH_(&pass->part);
    return ((unsigned)OUR_READ8(bits + (pixel >> 3)) >> (pixel & 7)) & OUR_FULL_(&pass->part);
}

{% endif %}
{% if runs %}
/* Take a half of a byte off the bitmaps. */
static unsigned our_half_(our_pass_ *pass)
{
    const unsigned byte = OUR_READ8(our_bits_ + (pass->half >> 1));

    return pass->half++ & 1 ? byte >> 4 : byte & 15;
}

/* Take a number off the bitmaps: a half, and as long as it is 15 the next half is added. */
static our_px_ our_number_(our_pass_ *pass)
{
    our_px_ number = 0;
    unsigned half;

    do {
        half = our_half_(pass);
        number += (our_px_)half;
    } while (half == 15);
    return number;
}

/* Go to the runs of a row of the glyph at the pen. Before each row stands 0, where it is as the row before, or 1 and
   how many halves it takes. */
static void our_seek_(our_pass_ *pass, unsigned row)
{
    {{ half_type }} begin = 0;
    our_px_ halves;

    pass->half = pass->row_end = ({{ half_type }})(({{ half_type }})pass->walk.glyph.first_byte << 1);
    do {
        halves = our_number_(pass);
        if (halves) {
            begin = pass->half;
            pass->half = ({{ half_type }})(begin + (unsigned)halves - 1u);
            pass->row_end = pass->half;
        }
    } while (row--);
    pass->half = begin;
    pass->level = 1;
}

/* Take a run off the row: set its level and return its length. */
static our_px_ our_next_(our_pass_ *pass)
{
    if (OUR_DEPTH_(&pass->part) == 1) {
        pass->level ^= 1;
        return our_number_(pass);
    }
    pass->level = (uint8_t)our_half_(pass);
    return pass->level == 0 || pass->level == 15 ? our_number_(pass) + 1 : 1;
}

{% endif %}
{% if overlaps %}
/* Paint a row of the area. Glyphs may lie over one another; a pixel gets the greatest level of all. */
static void our_row_(our_pass_ *pass)
{
    our_walk_ *const walk = &pass->walk;
    our_walk_ first; /* no glyph before it reaches x or what lies behind it */

    first = pass->first;
    while (pass->x < pass->part.right) {
        const our_px_ x = pass->x;
        our_px_ until = pass->part.right; /* up to here no level changes */
        unsigned level = 0;

        for (*walk = first; walk->pen + walk->glyph.left + walk->glyph.width <= x && our_step_(pass);)
            first = *walk;
        *walk = first;
        do {
            const our_px_ begin = walk->pen + walk->glyph.left;
            const unsigned row = (unsigned)(pass->y - pass->part.y) - walk->glyph.drop;
            our_px_ end = begin + walk->glyph.width;
            unsigned its_level = 0;

            if (row >= (unsigned)walk->glyph.height || end <= x)
                continue;
            if (begin > x) {
                end = begin;
            } else {
                our_px_ stop = begin;

{% if rows and runs %}
                if (OUR_FORM_(&pass->part) == OUR_AS_RUNS_) {
{% endif %}
{% if runs %}
{% filter indent(4 if rows else 0, true) %}
                our_seek_(pass, row);
                while (stop <= x) {
                    if (pass->half == pass->row_end) {
                        stop = end;
                        its_level = 0;
                    } else {
                        stop += our_next_(pass);
                        its_level = pass->level;
                    }
                }
{% endfilter %}
{% endif %}
{% if rows and runs %}
                } else {
{% endif %}
{% if rows %}
{% filter indent(4 if runs else 0, true) %}
                our_bit_ pixel = (our_bit_){{ "our_kept_(pass, row)" if repeats else "row" }} * (our_bit_)walk->glyph.width;


                pixel += (our_bit_)(x - begin);
                its_level = our_level_(pass, pixel);
                for (stop = x + 1; stop < end && our_level_(pass, ++pixel) == its_level;)
                    ++stop;
{% endfilter %}
{% endif %}
{% if rows and runs %}
                }
{% endif %}
                end = stop;
            }
            if (end < until)
                until = end;
            if (its_level > level)
                level = its_level;
        } while (walk->pen + OUR_REACH_ < until && our_step_(pass));
        our_to_(pass, until, level);
    }
}
{% else %}
/* Paint a row of the area. No two glyphs of a text lie over one another. */
static void our_row_(our_pass_ *pass)
{
    const our_glyph_ *const glyph = &pass->walk.glyph;

    pass->walk = pass->first;
    while (pass->x < pass->part.right && our_step_(pass)) {
        const unsigned row = (unsigned)(pass->y - pass->part.y) - glyph->drop;
        our_px_ x = pass->walk.pen + glyph->left;

        if (row >= (unsigned)glyph->height)
            continue;
        our_to_(pass, x, 0);
{% if rows and runs %}
        if (OUR_FORM_(&pass->part) == OUR_AS_RUNS_) {
{% endif %}
{% if runs %}
{% filter indent(4 if rows else 0, true) %}
        our_seek_(pass, row);
        while (pass->half != pass->row_end) {
            x += our_next_(pass);
            our_to_(pass, x, pass->level);
        }
{% endfilter %}
{% endif %}
{% if rows and runs %}
        } else {
{% endif %}
{% if rows %}
{% filter indent(4 if runs else 0, true) %}
        const our_bit_ first = (our_bit_){{ "our_kept_(pass, row)" if repeats else "row" }} * (our_bit_)glyph->width;
        our_bit_ pixel;

        for (pixel = first; pixel != first + (our_bit_)glyph->width; ++pixel)
            our_to_(pass, ++x, our_level_(pass, pixel));
{% endfilter %}
{% endif %}
{% if rows and runs %}
        }
{% endif %}
    }
    our_to_(pass, pass->part.right, 0);
}
{% endif %}

/* Paint the area of the part. */
static void our_paint_(our_pass_ *pass)
{
    const our_px_ left = pass->part.left, top = pass->part.top;

    pass->count = 0;
    pass->colour = 0;
    if (left >= pass->part.right || top >= pass->part.bottom)
        return;
    if (OUR_OPAQUE_(pass))
        our_window_(pass->port, left, top, pass->part.right - left, pass->part.bottom - top);
    for (pass->y = top; pass->y < pass->part.bottom; ++pass->y) {
        pass->x = left;
        our_row_(pass);
        if (!OUR_OPAQUE_(pass))
            our_flush_(pass);
    }
    our_flush_(pass);
}
{% if cells or changes %}
{% if not cells %}
#ifndef OUR_NO_CHANGES
{% endif %}

/* Paint a rectangle. */
static void our_paint_area_(our_pass_ *pass, our_px_ left, our_px_ top, our_px_ right, our_px_ bottom)
{
    pass->part.left = ({{ area_holds }}_t)left;
    pass->part.top = ({{ area_holds }}_t)top;
    pass->part.right = ({{ area_holds }}_t)right;
    pass->part.bottom = ({{ area_holds }}_t)bottom;
    our_paint_(pass);
}
{% if not cells %}
#endif
{% endif %}
{% endif %}
{% if cells %}

/* Paint the cell of the text, ground included, then what it inks elsewhere. */
static void our_paint_cell_(our_pass_ *pass, our_px_ width)
{
    const our_px_ left = pass->part.left, top = pass->part.top;
    const our_px_ right = pass->part.right, bottom = pass->part.bottom;
    our_px_ cell_left = pass->first.pen, cell_right = cell_left + width;
    our_px_ cell_top = pass->part.cell_top, cell_bottom = pass->part.cell_bottom;

{% if cell_icons %}
    if (OUR_OWN_CELL_(&pass->part)) {
        cell_bottom = pass->part.y + pass->walk.glyph.height;
        if (cell_bottom > bottom)
            cell_bottom = bottom;
    }
{% endif %}
    if (cell_left < left)
        cell_left = left;
    if (cell_right > right)
        cell_right = right;
    if (cell_left >= cell_right || cell_top >= cell_bottom)
        cell_top = cell_bottom = top;
    pass->opaque = 1;
    our_paint_area_(pass, cell_left, cell_top, cell_right, cell_bottom);
    pass->opaque = 0;
    our_paint_area_(pass, left, top, right, cell_top);
    our_paint_area_(pass, left, cell_top, cell_left, cell_bottom);
    our_paint_area_(pass, cell_right, cell_top, right, cell_bottom);
    our_paint_area_(pass, left, cell_bottom, right, bottom);
}
{% endif %}

/* Get ready to paint a text{{ "; `fixed` tells that it lies among the constants" if fixed }}. Return its width. */
static our_px_ our_open_(our_pass_ *pass, const our_port *port, const our_part_ *part, const char *text
                         {{- ", uint8_t fixed" if fixed }}{{ ", const uint16_t *ink" if inks_vary }})
{
    our_px_ width;
    unsigned rest;

    our_load_(&pass->part, part, sizeof pass->part);
    pass->port = port;
{% if inks_vary %}
    pass->ink = ink ? OUR_READ16(ink) : OUR_INK_(&pass->part);
{% else %}
    pass->ink = OUR_INK_(&pass->part);
{% endif %}
{% if fixed %}
    pass->fixed = fixed;
{% endif %}
{% if changes %}
#ifndef OUR_NO_CHANGES
    pass->looking = 0;
#endif
{% endif %}
    pass->end = text{{ ' ? text : ""' if fields_too }};
    pass->walk.next = pass->end;
    pass->walk.pen = 0;
    pass->walk.place = 0;
{% if overlaps %}
    pass->walk.glyph.left = 0;
    pass->walk.glyph.width = 0;
    pass->walk.glyph.height = 0;
{% endif %}
    pass->walk.glyph.advance = 0;
    pass->first = pass->walk;
    for (rest = OUR_LONGEST_(&pass->part); rest && OUR_CHAR_(pass, pass->end); --rest)
        ++pass->end;
{% if aligned or cells %}
    while (our_step_(pass)) {
    }
    width = pass->walk.pen;
{% else %}
    width = 0; /* not needed */
{% endif %}
    pass->first.pen = pass->part.x;
{% if aligned %}
    pass->first.pen -= (width * OUR_ALIGNMENT_(&pass->part) - (width * OUR_ALIGNMENT_(&pass->part) & 1)) / 2;
{% endif %}
    return width;
}

/* Show a text{{ "; `fixed` tells that it lies among the constants" if fixed }}. */
static void our_show_(const our_port *port, const our_part_ *part, const char *text{{ ", uint8_t fixed" if fixed }}
                      {{- ", const uint16_t *ink" if inks_vary }})
{
    our_pass_ pass;
{% if cells %}
    const our_px_ width = our_open_(&pass, port, part, text{{ ", fixed" if fixed }}{{ ", ink" if inks_vary }});

    if (OUR_CLEARING_(&pass.part) == OUR_CELL_) {
        our_paint_cell_(&pass, width);
        return;
    }
{% else %}

    (void)our_open_(&pass, port, part, text{{ ", fixed" if fixed }}{{ ", ink" if inks_vary }});
{% endif %}
{% if boxes %}
    if (OUR_CLEARING_(&pass.part) == OUR_BOX_)
        our_fill_(port, pass.part.left, pass.part.top, pass.part.right - pass.part.left,
                  pass.part.bottom - pass.part.top, OUR_GROUND_(&pass.part));
{% endif %}
{% if modes %}
    pass.opaque = OUR_CLEARING_(&pass.part) == OUR_PAD_;
{% endif %}
    our_paint_(&pass);
}
{% if icons %}

/* Show an icon: a text of one character, its code the number of the state, from 1. */
static void our_show_icon_(const our_port *port, const our_part_ *part, unsigned states, unsigned state
                           {{- ", const uint16_t *inks" if inks_vary }})
{
    char text[2];

    if (state >= states)
        return;
    text[0] = (char)(state + 1);
    text[1] = '\0';
    our_show_(port, part, text{{ ", 0" if fixed }}{{ ", inks ? inks + state : NULL" if inks_vary }});
}
{% endif %}
{% if changes %}

{% include "changes.c" %}
{% endif %}
{% endif %}
