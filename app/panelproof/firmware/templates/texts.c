/* ---- Texts of fields --------------------------------------------------------------------------------------- */

#ifndef OUR_NO_TEXT_FUNCTIONS
{% if decimals and decimals.reals %}
#include <float.h>
{% endif %}
{% if prints %}
#include <stdio.h>
{% endif %}
{% if guards | selectattr("wide_int") | list %}

/* Some range needs an int of 32 bits; where this line fails, print that field with `%ld` or `%lu`. */
typedef char our_int_has_32_bits_[sizeof(int) >= 4 ? 1 : -1];
{% endif %}
{% if guards | selectattr("copies") | list %}

/* Copy a text, as much of it as there is room for; return its bytes. `fixed` tells that it lies among the constants. */
static int our_copy_(char *buffer, size_t room, const char *text, uint8_t fixed)
{
    size_t bytes = 0;

    for (; bytes + 1 < room; ++bytes, ++text) {
        buffer[bytes] = OUR_APART_ && fixed ? (char)OUR_READ8(text) : *text;
        if (!buffer[bytes])
            return (int)bytes;
    }
    buffer[bytes] = '\0';
    return (int)bytes;
}
{% endif %}
{% if guards | selectattr("chooses") | list %}

/* Return a text of a row of texts that each end with a zero. */
static const char *our_choice_(const char *texts, int choice)
{
    for (; choice; --choice)
        while (OUR_READ8(texts++)) {
        }
    return texts;
}
{% endif %}
{% if decimals %}

{% include "decimals.c" %}
{% endif %}
{% if alphabets %}

{% for table in alphabets %}
/* First and last character of each range, the bytes of a character as one number. */
static OUR_CONST uint32_t {{ table.name }}[] = {
{% for line in table.lines %}
{{ line }}
{% endfor %}
};

{% endfor %}
/* Tell whether a text has so many characters, all of them in some range. */
static int our_accepts_(const char *text, unsigned shortest, unsigned longest, const uint32_t *ranges,
                        unsigned count)
{
    unsigned length = 0, range;

    if (!text)
        return 0;
    for (; *text; ++length) {
        uint8_t lead = (uint8_t)*text++;
        uint32_t code = lead;

        for (; lead >= 0xC0 && ((uint8_t)*text & 0xC0) == 0x80; lead = (uint8_t)(lead << 1))
            code = code << 8 | (uint8_t)*text++;
        for (range = 0; range < count; ++range) {
            if (code >= OUR_READ32(ranges + 2 * range) && code <= OUR_READ32(ranges + 2 * range + 1))
                break;
        }
        if (range == count || length == longest)
            return 0;
    }
    return length >= shortest;
}
{% endif %}
{% for guard in guards %}

{{ guard.declaration }}
{
{% for line in guard.body %}
{{ line }}
{% endfor %}
}
{% endfor %}
#endif /* OUR_NO_TEXT_FUNCTIONS */
