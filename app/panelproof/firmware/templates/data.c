{% if passes %}
/* ---- Data -------------------------------------------------------------------------------------------------- */

#ifndef OUR_CONST
#define OUR_CONST           const
#define OUR_READ8(address)  (*(const uint8_t *)(address))
#define OUR_READ16(address) (*(const uint16_t *)(address))
#define OUR_READ32(address) (*(const uint32_t *)(address))
#endif

/* Bitmaps, row after row with nothing between, the first pixel in the lowest bits; {{ bits_size }} bytes. */
static OUR_CONST uint8_t our_bits_[] = {
{% for title, lines in bitmaps %}
    /* {{ title }} */
{% for line in lines %}
{{ line }}
{% endfor %}
{% endfor %}
};

{% for record in records %}
{{ record.comment }}
typedef struct {{ record.name }} {
{% for line in record.members %}
    {{ line }}
{% endfor %}
} {{ record.name }};

{% for line in record.accessors %}
{{ line }}
{% endfor %}
{% for array in record.arrays %}

static OUR_CONST {{ record.name }} {{ array.name }} = {
{% for line in array.lines %}
    {{ line }}
{% endfor %}
};
{% endfor %}

{% endfor %}
#define OUR_LEVEL_(bytes, bit, full) (((unsigned)OUR_READ8((bytes) + ((bit) >> 3)) >> ((bit)&7)) & (full))
typedef {{ bit_type }} our_bit_; /* a bit within one bitmap */
{% if texts %}
#define OUR_NO_CODE_ 0xFFFFFFFFu
{% endif %}
{% if ramps %}

/* Colours of the levels 1 to 14 of antialiased texts, from ground to ink. */
static OUR_CONST uint16_t our_ramps_[][14] = {
{% for title, line in ramps %}
    /* {{ title }} */
    {{ line }}
{% endfor %}
};
{% endif %}
{% endif %}
