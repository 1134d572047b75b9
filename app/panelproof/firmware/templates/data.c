{% if passes or fills or levels or rasters %}
/* A place brought between two others; onto the panel. */
#define OUR_WITHIN_(at, least, greatest) ((at) < (least) ? (least) : (at) > (greatest) ? (greatest) : (at))
#define OUR_ACROSS_(at)                  ({{ area_holds }}_t)OUR_WITHIN_(at, 0, OUR_PANEL_WIDTH)
#define OUR_DOWN_(at)                    ({{ area_holds }}_t)OUR_WITHIN_(at, 0, OUR_PANEL_HEIGHT)

{% endif %}
{% if passes or levels or rasters %}
/* ---- Data -------------------------------------------------------------------------------------------------- */

#ifdef OUR_CONST
#define OUR_APART_ 1
#else
#define OUR_APART_          0
#define OUR_CONST           const
#define OUR_READ8(address)  (*(const uint8_t *)(address))
#define OUR_READ16(address) (*(const uint16_t *)(address))
#define OUR_READ32(address) (*(const uint32_t *)(address))
#endif

{% endif %}
{% if passes %}
/* Bitmaps, row after row with nothing between, the first pixel in the lowest bits; {{ bits_size }} bytes. */
static OUR_CONST uint8_t our_bits_[] = {
{% for title, lines in bitmaps %}
    /* {{ title }} */
{% for line in lines %}
{{ line }}
{% endfor %}
{% endfor %}
};

{% for table in tables %}
/* {{ table.comment }} */
{% if table.holds == "char" %}
static OUR_CONST char {{ table.name }}[] = {{ table.lines[0] }};
{% else %}
static OUR_CONST {{ table.c_type }} {{ table.name }}[] = {
{% for line in table.lines %}
{{ line }}
{% endfor %}
};
{% endif %}

{% endfor %}
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
{% if levels %}
/* How far one value lies over another; the pixel that a mark stands on, from 0 at the empty end. */
#define OUR_APART_BY_(at, least) ((uint32_t)(at) - (uint32_t)(least))
{% if levels.limits %}
#define OUR_SHARE_(at, least, greatest, length) \
    ((uint64_t)OUR_APART_BY_(at, least) * (length) / OUR_APART_BY_(greatest, least))
#define OUR_MARK_(at, least, greatest, length)                                                             \
    (int16_t)(OUR_SHARE_(at, least, greatest, length) < (length) ? OUR_SHARE_(at, least, greatest, length) \
                                                                 : (length) - 1)

/* Limits of level bars: how far over the least value, the bar's ink from there, the pixel of the mark (-1: none). */
typedef struct our_limit_ {
    uint32_t above;
    uint16_t ink;
    int16_t mark;
} our_limit_;

static OUR_CONST our_limit_ our_limits_[] = {
{% for line in levels.limits %}
    {{ line }}
{% endfor %}
};
{% endif %}

{{ levels.record.comment }}
typedef struct {{ levels.record.name }} {
{% for line in levels.record.members %}
    {{ line }}
{% endfor %}
} {{ levels.record.name }};

{% for line in levels.record.accessors %}
{{ line }}
{% endfor %}
{% for array in levels.record.arrays %}

static OUR_CONST {{ levels.record.name }} {{ array.name }} = {
{% for line in array.lines %}
    {{ line }}
{% endfor %}
};
{% endfor %}

{% endif %}
{% if rasters %}
{% for picture in rasters.pictures %}
/* {{ picture.title }} */
static OUR_CONST uint8_t {{ picture.dots }}[] = {
{% for line in picture.dot_lines %}
{{ line }}
{% endfor %}
};
{% if picture.colour_lines %}

/* Its colours. */
static OUR_CONST uint16_t {{ picture.colours }}[] = {
{% for line in picture.colour_lines %}
{{ line }}
{% endfor %}
};
{% endif %}

/* Its opaque rectangles: x, y, width, height of each. */
static OUR_CONST uint{{ rasters.bits }}_t {{ picture.areas }}[] = {
{% for line in picture.area_lines %}
{{ line }}
{% endfor %}
};

{% endfor %}
{% endif %}
