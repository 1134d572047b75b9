/* ---- Level bars: every pixel painted once, in one window --------------------------------------------------- */

/* floor(part * length / whole) for a part of a whole and a length of at most 4096, bit by bit: no product that could
   overflow, no division. */
static uint16_t our_share_(uint32_t part, uint32_t whole, uint16_t length)
{
    uint32_t rest = 0;
    uint16_t share = 0, bit;

    for (bit = 0x1000; bit; bit = (uint16_t)(bit >> 1)) {
        share = (uint16_t)(share << 1);
        if (rest >= whole - rest) {
            rest -= whole - rest;
            ++share;
        } else {
            rest += rest;
        }
        if (!(length & bit))
            continue;
        if (rest >= whole - part) {
            rest -= whole - part;
            ++share;
        } else {
            rest += part;
        }
    }
    return share;
}

/* Return how many pixels of a bar a value fills, and the ink; -1 where it lies outside the range. */
static our_px_ our_reached_(const our_meter_ *meter, int32_t value, uint16_t *ink)
{
    const uint32_t above = (uint32_t)value - (uint32_t)OUR_LEAST_(meter);
{% if levels.limits %}
    our_limit_ limit;
    uint8_t n;
{% endif %}

    (void)meter; /* where all bars are alike, constants say it */
    *ink = OUR_BAR_(meter);
    if (above > OUR_SPAN_(meter))
        return -1;
{% if levels.limits %}
    for (n = 0; n < OUR_LIMITS_(meter); ++n) {
        our_load_(&limit, our_limits_ + OUR_FIRST_LIMIT_(meter) + n, sizeof limit);
        if (limit.above <= above)
            *ink = limit.ink;
    }
{% endif %}
    return (our_px_)our_share_(above, OUR_SPAN_(meter), OUR_LENGTH_(meter));
}

/* Paint the area of a bar, so many pixels of which are filled; with -1 the fault pattern. */
static void our_paint_meter_(const our_port *port, const our_meter_ *meter, our_px_ filled, uint16_t ink)
{
{% if levels.limits %}
    our_limit_ limit;
    uint8_t n;
{% endif %}
    uint16_t colour, last = 0;
    our_count_ count = 0;
{% if levels.backward %}
    const our_px_ from = OUR_WAY_(meter) & 1 ? (our_px_)OUR_LENGTH_(meter) - filled : 0;
{% else %}
    const our_px_ from = 0;
{% endif %}
    our_px_ x, y, until;

    if (meter->left >= meter->right || meter->top >= meter->bottom)
        return;
    our_window_(port, meter->left, meter->top, meter->right - meter->left, meter->bottom - meter->top);
    for (y = meter->top; y < meter->bottom; ++y) {
        for (x = meter->left; x < meter->right; x = until) {
{% if levels.upright and levels.lying %}
            const our_px_ at = OUR_WAY_(meter) & 2 ? y - meter->y : x - meter->x;
{% elif levels.upright %}
            const our_px_ at = y - meter->y;
{% else %}
            const our_px_ at = x - meter->x;
{% endif %}
            const uint8_t full = at >= from && at < from + filled;

            colour = full ? ink : OUR_UNDER_(meter);
            until = full ? from + filled : at < from ? from : (our_px_)OUR_LENGTH_(meter);
{% if levels.limits %}
            for (n = 0; n < OUR_LIMITS_(meter); ++n) {
                our_load_(&limit, our_limits_ + OUR_FIRST_LIMIT_(meter) + n, sizeof limit);
                if (limit.mark == at) {
                    colour = full ? OUR_UNDER_(meter) : limit.ink;
                    until = at + 1;
                } else if (limit.mark > at && limit.mark < until) {
                    until = limit.mark;
                }
            }
{% endif %}
            if (filled < 0) {
                colour = (x - meter->x + y - meter->y) & 3 ? OUR_UNDER_(meter) : ink;
                until = x + 1;
            } else {
{% if levels.upright and levels.lying %}
                until = OUR_WAY_(meter) & 2 ? meter->right : x + until - at;
{% elif levels.upright %}
                until = meter->right;
{% else %}
                until += x - at;
{% endif %}
                if (until > meter->right)
                    until = meter->right;
            }
            if (colour != last && count) {
                our_run_(port, last, count);
                count = 0;
            }
            last = colour;
            count = (our_count_)(count + (our_count_)(until - x));
        }
    }
    our_run_(port, last, count);
}

/* Show a value, or the fault pattern where it lies outside the range. */
static void our_show_meter_(const our_port *port, const our_meter_ *constant, int32_t value)
{
    our_meter_ meter;
    our_px_ filled;
    uint16_t ink;

    our_load_(&meter, constant, sizeof meter);
    filled = our_reached_(&meter, value, &ink);
    our_paint_meter_(port, &meter, filled, ink);
}
{% if not whole %}

#ifndef OUR_NO_CHANGES
/* Show a value where a former one stands: of the bar only the stretch between them, where the ink changes all of it. */
static void our_change_meter_(const our_port *port, const our_meter_ *constant, int32_t former, int32_t value)
{
    our_meter_ meter;
    our_px_ was, now, low, high;
    uint16_t ink, other;

    our_load_(&meter, constant, sizeof meter);
    was = our_reached_(&meter, former, &other);
    now = our_reached_(&meter, value, &ink);
    if (was == now && (ink == other || now <= 0))
        return;
    if (was >= 0 && now >= 0) {
        low = was < now ? was : now;
        high = was < now ? now : was;
        if (ink != other)
            low = 0;
{% if levels.backward %}
        if (OUR_WAY_(&meter) & 1) {
            const our_px_ end = (our_px_)OUR_LENGTH_(&meter) - low;

            low = (our_px_)OUR_LENGTH_(&meter) - high;
            high = end;
        }
{% endif %}
{% set deeper = "    " if levels.upright and levels.lying else "" %}
{% if levels.upright and levels.lying %}
        if (OUR_WAY_(&meter) & 2) {
{% endif %}
{% if levels.upright %}
        {{ deeper }}low += meter.y;
        {{ deeper }}high += meter.y;
        {{ deeper }}if (low >= meter.bottom || high <= meter.top)
        {{ deeper }}    return;
        {{ deeper }}if (low > meter.top)
        {{ deeper }}    meter.top = ({{ area_holds }}_t)low;
        {{ deeper }}if (high < meter.bottom)
        {{ deeper }}    meter.bottom = ({{ area_holds }}_t)high;
{% endif %}
{% if levels.upright and levels.lying %}
        } else {
{% endif %}
{% if levels.lying %}
        {{ deeper }}low += meter.x;
        {{ deeper }}high += meter.x;
        {{ deeper }}if (low >= meter.right || high <= meter.left)
        {{ deeper }}    return;
        {{ deeper }}if (low > meter.left)
        {{ deeper }}    meter.left = ({{ area_holds }}_t)low;
        {{ deeper }}if (high < meter.right)
        {{ deeper }}    meter.right = ({{ area_holds }}_t)high;
{% endif %}
{% if levels.upright and levels.lying %}
        }
{% endif %}
    }
    our_paint_meter_(port, &meter, now, ink);
}
#endif /* OUR_NO_CHANGES */
{% endif %}
