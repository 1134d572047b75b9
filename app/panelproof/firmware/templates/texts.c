/* ---- Texts of fields --------------------------------------------------------------------------------------- */

#ifndef OUR_NO_TEXT_FUNCTIONS
#include <stdio.h>
{% if guards | selectattr("wide_int") | list %}

/* Some range needs an int of 32 bits; where this line fails, print that field with `%ld` or `%lu`. */
typedef char our_int_has_32_bits_[sizeof(int) >= 4 ? 1 : -1];
{% endif %}
{% if guards | selectattr("copies") | list %}

/* Copy a text, as much of it as there is room for; return its bytes. */
static int our_copy_(char *buffer, size_t room, const char *text)
{
    size_t bytes = 0;

    while (bytes + 1 < room && text[bytes]) {
        buffer[bytes] = text[bytes];
        ++bytes;
    }
    buffer[bytes] = '\0';
    return (int)bytes;
}
{% endif %}
{% if alphabets %}

{% for table in alphabets %}
/* First and last code of each range of characters. */
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
        const uint32_t code = our_take_(&text, NULL);

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
