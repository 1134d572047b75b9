/* ---- Drawing: one pass over a text or an icon, every pixel painted once, no buffer ------------------------- */

{% if px == "int" %}
typedef int our_px_; /* a place in pixels; 16 bits are enough for every text of this layout */
{% else %}
typedef int32_t our_px_; /* a place in pixels; texts of this layout are too long for 16 bits */
{% endif %}

typedef struct our_area_ { /* right and bottom lie just outside */
    our_px_ left, top, right, bottom;
} our_area_;

static our_area_ our_common_(our_area_ one, our_area_ other)
{
    if (one.left < other.left)
        one.left = other.left;
    if (one.top < other.top)
        one.top = other.top;
    if (one.right > other.right)
        one.right = other.right;
    if (one.bottom > other.bottom)
        one.bottom = other.bottom;
    if (one.left >= one.right || one.top >= one.bottom)
        one.left = one.top = one.right = one.bottom = 0;
    return one;
}

static our_area_ our_on_panel_(our_px_ x, our_px_ y, our_px_ width, our_px_ height)
{
    our_area_ area, panel;

    area.left = x;
    area.top = y;
    area.right = x + width;
    area.bottom = y + height;
    panel.left = panel.top = 0;
    panel.right = OUR_PANEL_WIDTH;
    panel.bottom = OUR_PANEL_HEIGHT;
    return our_common_(area, panel);
}

static void our_window_(const our_port *port, our_area_ area)
{
    port->window(port->context, (uint16_t)area.left, (uint16_t)area.top, (uint16_t)(area.right - area.left),
                 (uint16_t)(area.bottom - area.top));
}

static void our_fill_(const our_port *port, our_px_ x, our_px_ y, our_px_ width, our_px_ height, uint16_t colour)
{
    const our_area_ area = our_on_panel_(x, y, width, height);

    if (area.right > area.left) {
        our_window_(port, area);
        port->run(port->context, colour, (uint32_t)(area.right - area.left) * (uint32_t)(area.bottom - area.top));
    }
}
{% if outlines %}

static void our_outline_(const our_port *port, our_px_ x, our_px_ y, our_px_ width, our_px_ height,
                         our_px_ thickness, uint16_t colour)
{
    if (2 * thickness >= width || 2 * thickness >= height) {
        our_fill_(port, x, y, width, height, colour);
        return;
    }
    our_fill_(port, x, y, width, thickness, colour);
    our_fill_(port, x, y + thickness, thickness, height - 2 * thickness, colour);
    our_fill_(port, x + width - thickness, y + thickness, thickness, height - 2 * thickness, colour);
    our_fill_(port, x, y + height - thickness, width, thickness, colour);
}
{% endif %}
{% if passes %}

typedef struct our_walk_ { /* a place in a text */
    const char *next;
    const our_glyph_ *glyph; /* the glyph at the pen; NULL before the first and after the last */
    our_px_ pen;
} our_walk_;

typedef struct our_pass_ {
    const our_port *port;
    const our_part_ *part;
    const our_type_ *type;
    const char *end;
    our_walk_ first;
    our_px_ baseline;
    unsigned depth, full; /* bits a pixel; the level of pure ink */
    uint16_t ground, ink;
    int opaque;
    our_px_ x, y; /* the run that is not yet sent begins here */
    uint32_t count;
    uint16_t colour;
} our_pass_;
{% if texts %}

/* Take a character off a text and return its code. Of bytes that are not UTF-8 take one and return OUR_NO_CODE_. */
static uint32_t our_take_(const char **next, const char *end)
{
    const char *at = *next;
    uint32_t code = (uint8_t)*at++, least = 0x80;
    unsigned more = 1;

    *next = at;
    if (code < 0x80)
        return code;
    if (code < 0xC0 || code >= 0xF8)
        return OUR_NO_CODE_;
    if (code >= 0xF0) {
        more = 3;
        least = 0x10000;
    } else if (code >= 0xE0) {
        more = 2;
        least = 0x800;
    }
    code &= 0x3Fu >> more;
    while (more--) {
        if (at == end || ((uint8_t)*at & 0xC0) != 0x80)
            return OUR_NO_CODE_;
        code = code << 6 | ((uint8_t)*at++ & 0x3Fu);
    }
    if (code < least)
        return OUR_NO_CODE_;
    *next = at;
    return code;
}

static const our_glyph_ *our_find_(const our_type_ *type, uint32_t code)
{
    const our_glyph_ *low = our_glyphs_ + OUR_FIRST_GLYPH_(type), *end = low + OUR_GLYPH_COUNT_(type);
    size_t count = (size_t)(end - low), half;

    while (count) {
        half = count / 2;
        if (OUR_CODE_(low + half) < code) {
            low += half + 1;
            count -= half + 1;
        } else {
            count = half;
        }
    }
    return low != end && OUR_CODE_(low) == code ? low : NULL;
}
{% if kerning %}

static our_px_ our_kern_(const our_type_ *type, const our_glyph_ *left, const our_glyph_ *right)
{
    const our_glyph_ *first = our_glyphs_ + OUR_FIRST_GLYPH_(type);
    const our_pair_ *low = our_pairs_ + OUR_FIRST_PAIR_(type), *end = low + OUR_PAIR_COUNT_(type);
    const uint32_t pair = (uint32_t)(left - first) << 16 | (uint32_t)(right - first);
    size_t count = (size_t)(end - low), half;

    while (count) {
        half = count / 2;
        if (((uint32_t)OUR_PAIR_LEFT_(low + half) << 16 | OUR_PAIR_RIGHT_(low + half)) < pair) {
            low += half + 1;
            count -= half + 1;
        } else {
            count = half;
        }
    }
    return low != end && ((uint32_t)OUR_PAIR_LEFT_(low) << 16 | OUR_PAIR_RIGHT_(low)) == pair ? OUR_KERN_(low) : 0;
}
{% endif %}
{% endif %}

/* Go on to the next glyph of the text; 0 at its end. Characters without a glyph are passed over{{ ", and break the
   kerning of their neighbours" if kerning }}. */
static int our_step_(const our_pass_ *pass, our_walk_ *walk)
{
    const our_glyph_ *left = walk->glyph;

    if (left)
        walk->pen += OUR_ADVANCE_(left);
    walk->glyph = NULL;
{% if texts %}
    while (walk->next != pass->end) {
        walk->glyph = our_find_(pass->type, our_take_(&walk->next, pass->end));
        if (walk->glyph) {
{% if kerning %}
            if (left)
                walk->pen += our_kern_(pass->type, left, walk->glyph);
{% endif %}
            return 1;
        }
{% if kerning %}
        left = NULL;
{% endif %}
    }
{% else %}
    (void)pass;
{% endif %}
    return 0;
}

static void our_flush_(our_pass_ *pass)
{
    our_area_ area;

    if (!pass->count)
        return;
    if (!pass->opaque) {
        area.left = pass->x;
        area.top = pass->y;
        area.right = pass->x + (our_px_)pass->count;
        area.bottom = pass->y + 1;
        our_window_(pass->port, area);
    }
    pass->port->run(pass->port->context, pass->colour, pass->count);
    pass->count = 0;
}

/* Paint pixels of one level; neighbours of one colour become one run. */
static void our_put_(our_pass_ *pass, unsigned level, our_px_ x, our_px_ y, our_px_ count)
{
    uint16_t colour = level ? pass->ink : pass->ground;

    if (!level && !pass->opaque) {
        our_flush_(pass);
        return;
    }
{% if ramps %}
    if (level && level != pass->full)
        colour = OUR_READ16(&our_ramps_[OUR_RAMP_(pass->part)][level - 1]);
{% endif %}
    if (colour != pass->colour)
        our_flush_(pass);
    if (!pass->count) {
        pass->colour = colour;
        pass->x = x;
        pass->y = y;
    }
    pass->count += (uint32_t)count;
}

/* Paint the pixels from x to just before right in row y. */
static void our_row_(our_pass_ *pass, our_px_ x, our_px_ y, our_px_ right)
{
    const our_px_ reach = OUR_REACH_(pass->type);
    our_walk_ first = pass->first, walk;
    const uint8_t *bits = our_bits_;
    our_bit_ bit = 0, new_bit;

    while (x < right) {
        our_px_ until = right; /* up to here the same glyphs lie under every pixel */
        unsigned level = 0, new_level, inking = 0;

        while (first.glyph && first.pen + OUR_LEFT_(first.glyph) + OUR_WIDTH_(first.glyph) <= x)
            (void)our_step_(pass, &first);
        for (walk = first; walk.glyph && walk.pen + reach < until; (void)our_step_(pass, &walk)) {
            const our_px_ begin = walk.pen + OUR_LEFT_(walk.glyph), width = OUR_WIDTH_(walk.glyph);
            const our_px_ row = y - pass->baseline + OUR_TOP_(walk.glyph);

            if (row < 0 || row >= OUR_HEIGHT_(walk.glyph) || begin + width <= x)
                continue;
            if (begin > x) {
                if (begin < until)
                    until = begin;
                continue;
            }
            if (begin + width < until)
                until = begin + width;
            new_bit = ((our_bit_)row * (our_bit_)width + (our_bit_)(x - begin)) * pass->depth;
            new_level = OUR_LEVEL_(our_bits_ + OUR_FIRST_BYTE_(walk.glyph), new_bit, pass->full);
            bits = our_bits_ + OUR_FIRST_BYTE_(walk.glyph);
            bit = new_bit;
            if (new_level > level)
                level = new_level;
            ++inking;
        }
        if (!inking) {
            our_put_(pass, 0, x, y, until - x);
            x = until;
        } else if (inking > 1) { /* glyphs overlap: pixel by pixel */
            our_put_(pass, level, x++, y, 1);
        } else {
            for (;;) {
                our_put_(pass, level, x, y, 1);
                if (++x == until)
                    break;
                bit += pass->depth;
                level = OUR_LEVEL_(bits, bit, pass->full);
            }
        }
    }
    if (!pass->opaque)
        our_flush_(pass);
}

static void our_rows_(our_pass_ *pass, our_area_ area)
{
    our_px_ y;

    if (area.left == area.right)
        return;
    our_window_(pass->port, area);
    pass->opaque = 1;
    for (y = area.top; y < area.bottom; ++y)
        our_row_(pass, area.left, y, area.right);
    our_flush_(pass);
}

static void our_paint_(our_pass_ *pass, our_area_ cell)
{
    const our_part_ *part = pass->part;
    const unsigned clearing = OUR_CLEARING_(part);
    const our_area_ clip =
        our_on_panel_(OUR_AREA_X_(part), OUR_AREA_Y_(part), OUR_AREA_WIDTH_(part), OUR_AREA_HEIGHT_(part));
    our_px_ y;

    pass->count = 0;
    pass->colour = 0;
    if (clearing == OUR_PAD_) {
        our_rows_(pass, clip);
        return;
    }
    if (clearing == OUR_CELL_) {
        cell = our_common_(cell, clip);
        our_rows_(pass, cell);
    } else {
        cell.left = cell.top = cell.right = cell.bottom = 0;
    }
    if (clearing == OUR_BOX_)
        our_fill_(pass->port, clip.left, clip.top, clip.right - clip.left, clip.bottom - clip.top, pass->ground);
    pass->opaque = 0;
    for (y = clip.top; y < clip.bottom; ++y) {
        if (y >= cell.top && y < cell.bottom) {
            our_row_(pass, clip.left, y, cell.left);
            our_row_(pass, cell.right, y, clip.right);
        } else {
            our_row_(pass, clip.left, y, clip.right);
        }
    }
}
{% endif %}
{% if texts %}

static void our_show_text_(const our_port *port, const our_part_ *part, const char *text)
{
    our_pass_ pass;
    our_walk_ walk;
    our_area_ cell;
    our_px_ width;
    unsigned rest = OUR_LONGEST_(part);

    pass.port = port;
    pass.part = part;
    pass.type = our_types_ + OUR_TYPE_(part);
    pass.depth = OUR_DEPTH_(pass.type);
    pass.full = (1u << pass.depth) - 1u;
    pass.baseline = OUR_BASELINE_(part);
    pass.ground = OUR_GROUND_(part);
    pass.ink = OUR_INK_(part);
    pass.end = text ? text : "";
    pass.first.next = pass.end;
    pass.first.glyph = NULL;
    pass.first.pen = 0;
    for (; rest && *pass.end; --rest)
        ++pass.end;
    walk = pass.first;
    while (our_step_(&pass, &walk)) {
    }
    width = walk.pen;
    pass.first.pen = OUR_X_(part);
    if (OUR_ALIGNMENT_(part) == OUR_ENDS_AT_X)
        pass.first.pen -= width;
    else if (OUR_ALIGNMENT_(part) == OUR_CENTRED_ON_X)
        pass.first.pen -= (width - (width & 1)) / 2; /* half, rounded down where negative too */
    cell.left = pass.first.pen;
    cell.right = pass.first.pen + width;
    cell.top = pass.baseline - OUR_ASCENT_(pass.type);
    cell.bottom = pass.baseline + OUR_DESCENT_(pass.type);
    (void)our_step_(&pass, &pass.first);
    our_paint_(&pass, cell);
}
{% endif %}
{% if icons %}

static void our_show_icon_(const our_port *port, const our_part_ *part, const our_state_ *states, unsigned count,
                           unsigned state)
{
    our_pass_ pass;
    our_area_ cell;

    if (state >= count)
        return;
    pass.port = port;
    pass.part = part;
    pass.type = our_types_ + OUR_TYPE_(part);
    pass.depth = pass.full = 1;
    pass.baseline = OUR_BASELINE_(part);
    pass.ground = OUR_GROUND_(part);
    pass.ink = OUR_READ16(&states[state].ink);
    pass.end = pass.first.next = "";
    pass.first.glyph = our_glyphs_ + OUR_STATE_GLYPH_(states + state);
    pass.first.pen = OUR_X_(part);
    cell.left = pass.first.pen;
    cell.right = pass.first.pen + OUR_WIDTH_(pass.first.glyph);
    cell.top = pass.baseline;
    cell.bottom = pass.baseline + OUR_HEIGHT_(pass.first.glyph);
    our_paint_(&pass, cell);
}
{% endif %}
