/* ---- Pictures: rectangles of opaque pixels, each painted once ---------------------------------------------- */

/* Of a picture's bytes, each is several pixels; or a colour and how many pixels have it; or every second one is a colour,
   the one before it how many pixels more than one have it; or each two are a pixel. */
#define OUR_PACKED_  0
#define OUR_RUNS_    1
#define OUR_COUNTED_ 2
#define OUR_DIRECT_  3

/* Show a picture with its upper left corner at (x, y); what lies off the panel is passed over. */
static void our_show_picture_(const our_port *port, const uint8_t *dots, const uint16_t *colours,
                              const uint{{ rasters.bits }}_t *areas, unsigned count_of_areas, uint8_t form, uint8_t bits, our_px_ x,
                              our_px_ y)
{
    uint16_t colour = 0, last = 0;
    our_count_ count = 0;
{% if rasters.forms != ["direct"] %}
    uint8_t byte = 0;
    unsigned held = 0; /* pixels of this byte still to come */
{% endif %}

{% if rasters.forms == ["direct"] %}
    (void)colours;
{% endif %}
{% if rasters.forms | length == 1 %}
    (void)form;
{% endif %}
{% if rasters.forms in (["direct"], ["counted"]) %}
    (void)bits;
{% endif %}
    for (; count_of_areas; --count_of_areas, areas += 4) {
        const our_px_ left = x + (our_px_)OUR_READ{{ rasters.bits }}(areas), top = y + (our_px_)OUR_READ{{ rasters.bits }}(areas + 1);
        const our_px_ right = left + (our_px_)OUR_READ{{ rasters.bits }}(areas + 2);
        const our_px_ bottom = top + (our_px_)OUR_READ{{ rasters.bits }}(areas + 3);
        const our_px_ first = OUR_ACROSS_(left), end = OUR_ACROSS_(right);
        our_px_ column, row = OUR_DOWN_(top);

        if (first < end && row < OUR_DOWN_(bottom))
            our_window_(port, first, row, end - first, OUR_DOWN_(bottom) - row);
        for (row = top; row < bottom; ++row) {
            for (column = left; column < right; ++column) {
{% if "direct" in rasters.forms %}
{% if rasters.forms | length > 1 %}
                if (form == OUR_DIRECT_) {
                    colour = (uint16_t)(OUR_READ8(dots) | (uint16_t)OUR_READ8(dots + 1) << 8);
                    dots += 2;
                    held = 1;
                }
{% else %}
                colour = (uint16_t)(OUR_READ8(dots) | (uint16_t)OUR_READ8(dots + 1) << 8);
                dots += 2;
{% endif %}
{% endif %}
{% if rasters.forms != ["direct"] %}
                if (!held) {
                    held = 1;
{% if "counted" in rasters.forms %}
{% if rasters.forms | length > 1 %}
                    if (form == OUR_COUNTED_)
{% endif %}
                        held += OUR_READ8(dots++);
{% endif %}
                    byte = OUR_READ8(dots++);
{% if "runs" in rasters.forms %}
{% if rasters.forms | length > 1 %}
                    if (form == OUR_RUNS_)
{% endif %}
                        held += (unsigned)byte >> bits;
{% endif %}
{% if "packed" in rasters.forms %}
{% if rasters.forms | length > 1 %}
                    if (form == OUR_PACKED_)
{% endif %}
                        held = 8u / bits;
{% endif %}
{% if rasters.forms == ["counted"] %}
                    colour = OUR_READ16(colours + byte);
                }
{% else %}
                }
{% if "direct" in rasters.forms %}
                if (form != OUR_DIRECT_)
{% endif %}
                    colour = OUR_READ16(colours + (byte & ((1u << bits) - 1u)));
{% if "packed" in rasters.forms %}
{% if rasters.forms | length > 1 %}
                if (form == OUR_PACKED_)
{% endif %}
                    byte = (uint8_t)((unsigned)byte >> bits);
{% endif %}
{% endif %}
                --held;
{% endif %}
                if (column < first || column >= end || row < 0 || row >= OUR_PANEL_HEIGHT)
                    continue;
                if (colour != last && count) {
                    our_run_(port, last, count);
                    count = 0;
                }
                last = colour;
                ++count;
            }
        }
        if (count)
            our_run_(port, last, count);
        count = 0;
    }
}
