#ifndef OUR_NO_CHANGES
/* ---- Changes: of a part that is shown already, only what differs ------------------------------------------- */

#define OUR_STRIP_ {{ strip }} /* columns looked at together */
#define OUR_COST_  {{ window_cost }} /* as many pixels take as long as opening a window */

/* Return the levels of a row of a strip. */
static {{ seen_type }} our_look_(our_pass_ *pass, our_px_ left, our_px_ right, our_px_ y)
{
    pass->seen = 0;
    pass->x = left;
    pass->y = y;
    pass->part.right = ({{ area_holds }}_t)right;
    pass->looking = 1;
    our_row_(pass);
    pass->looking = 0;
    return pass->seen;
}

/* Go through a strip and paint the pixels that differ, rows that are cheaper together in one window. */
static void our_change_strip_(our_pass_ *former, our_pass_ *now, const our_walk_ *whole, our_px_ left, our_px_ right)
{
    const our_px_ top = former->part.top, bottom = former->part.bottom;
    const our_walk_ part_of_it = now->first;
    our_px_ y, begin, end, band_left = 0, band_right = 0, band_top = 0, band_bottom = 0;

    for (y = top;; ++y) {
        {{ seen_type }} differ = 0;

        begin = end = right;
        if (y < bottom)
            differ = our_look_(former, left, right, y) ^ our_look_(now, left, right, y);
        if (differ) {
            for (; !(differ & OUR_FULL_(&now->part)); --end)
                differ = ({{ seen_type }})(differ >> OUR_DEPTH_(&now->part));
            for (begin = end; differ; --begin)
                differ = ({{ seen_type }})(differ >> OUR_DEPTH_(&now->part));
        }
        if (band_top < band_bottom) {
            const our_px_ least = begin < band_left ? begin : band_left, most = end > band_right ? end : band_right;

            if (begin < end && (most - least) * (y + 1 - band_top) <=
                                   (band_right - band_left) * (band_bottom - band_top) + OUR_COST_ + end - begin) {
                band_left = least;
                band_right = most;
                band_bottom = y + 1;
                continue;
            }
            if (begin < end || y == bottom) {
                now->first = *whole;
                our_paint_area_(now, band_left, band_top, band_right, band_bottom);
                now->first = part_of_it;
                band_bottom = band_top;
            }
        }
        if (y == bottom)
            return;
        if (begin < end) {
            band_left = begin;
            band_right = end;
            band_top = y;
            band_bottom = y + 1;
        }
    }
}

/* Bring a text that is shown up to date. */
static void our_change_(const our_port *port, const our_part_ *part, const char *shown, const char *text
                        {{- ", const uint16_t *ink" if inks_vary }})
{
    our_pass_ former, now;
    our_walk_ whole;
    our_px_ left, right, until;
    unsigned more, more_now;

    if (!shown) {
        our_show_(port, part, text{{ ", 0" if fixed }}{{ ", ink" if inks_vary }});
        return;
    }
    (void)our_open_(&former, port, part, shown{{ ", 0" if fixed }}{{ ", ink" if inks_vary }});
    (void)our_open_(&now, port, part, text{{ ", 0" if fixed }}{{ ", ink" if inks_vary }});
{% if modes %}
    now.opaque = 1;
{% endif %}
    whole = now.first;
    former.walk = former.first;
    now.walk = now.first;
    left = now.part.right;
    right = now.part.left;
    more = our_step_(&former);
    more_now = our_step_(&now);
    while (more || more_now) {
        our_walk_ *walk = &now.walk;

        if (more && more_now && former.walk.place == now.walk.place && former.walk.pen == now.walk.pen) {
            if (left >= right) { /* nothing differs so far: glyphs before this one need not be looked at */
                former.first = former.walk;
                now.first = now.walk;
            }
            more = our_step_(&former);
            more_now = our_step_(&now);
            continue;
        }
        if (more && (!more_now || former.walk.pen <= now.walk.pen))
            walk = &former.walk;
        until = walk->pen + walk->glyph.left;
        if (until < left)
            left = until;
        until += walk->glyph.width;
        if (until > right)
            right = until;
        if (walk == &former.walk)
            more = our_step_(&former);
        else
            more_now = our_step_(&now);
    }
    if (left < now.part.left)
        left = now.part.left;
    if (right > now.part.right)
        right = now.part.right;
    for (; left < right; left = until) {
        until = right - left > OUR_STRIP_ ? left + OUR_STRIP_ : right;
        our_change_strip_(&former, &now, &whole, left, until);
    }
}
{% if icon_changes %}

/* Bring an icon that is shown up to date; all of it where the inks of the two states differ. */
static void our_change_icon_(const our_port *port, const our_part_ *part, unsigned states, unsigned former,
                             unsigned state{{ ", const uint16_t *inks" if inks_vary }})
{
    char shown[2], text[2];

    if (state >= states)
        return;
    shown[0] = (char)(former + 1);
    text[0] = (char)(state + 1);
    shown[1] = text[1] = '\0';
{% if inks_vary %}
    if (former < states && inks && OUR_READ16(inks + former) != OUR_READ16(inks + state))
        former = states;
{% endif %}
    our_change_(port, part, former < states ? shown : NULL, text{{ ", inks ? inks + state : NULL" if inks_vary }});
}
{% endif %}
#endif /* OUR_NO_CHANGES */
