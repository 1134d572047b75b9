typedef {{ decimals.number }} our_scaled_; /* a real times a power of ten */
{% if decimals.reals %}

/* Return the size of a real times a power of ten, rounded just as the C library prints it: to the nearest whole
   number, of two as near to the even one. A double is taken apart as IEEE 754 has it, in 64 or in 32 bits. */
static our_scaled_ our_round_(double value, uint32_t scale)
{
    uint8_t odd = 0, rest = 0; /* the first bit behind the number, and whether one follows */
    unsigned n;
    int shift;
#if DBL_MANT_DIG == 53
    uint64_t bits = 0, high, low;

    for (n = 0; n < sizeof bits; ++n)
        ((uint8_t *)&bits)[n] = ((const uint8_t *)&value)[n];
    shift = (int)(bits >> 52 & 0x7FF);
    bits &= 0xFFFFFFFFFFFFFu;
    bits |= (uint64_t)(shift != 0) << 52;
    shift = 1075 - (shift ? shift : 1);
    low = (bits & 0xFFFFFFFFu) * scale;
    high = (bits >> 32) * scale + (low >> 32);
    low &= 0xFFFFFFFFu;
    for (n = 0; shift > 0 && n < 96; ++n, --shift) {
        rest |= odd;
        odd = (uint8_t)(low & 1);
        low = low >> 1 | (high & 1) << 31;
        high >>= 1;
    }
    low |= high << 32;
#elif DBL_MANT_DIG == 24
    uint32_t bits = 0;
    {{ decimals.single }} low;

    for (n = 0; n < sizeof bits; ++n)
        ((uint8_t *)&bits)[n] = ((const uint8_t *)&value)[n];
    shift = (int)(bits >> 23 & 0xFF);
    bits &= 0x7FFFFFu;
    bits |= (uint32_t)(shift != 0) << 23;
    shift = 150 - (shift ? shift : 1);
    low = ({{ decimals.single }})(({{ decimals.single }})bits * scale);
    for (n = 0; shift > 0 && n < 64; ++n, --shift) {
        rest |= odd;
        odd = (uint8_t)(low & 1);
        low >>= 1;
    }
#else
#error a double of neither 64 nor 32 bits: leave the text functions out
#endif
    if (shift > 0)
        odd = 0; /* nothing is left */
    else
        low <<= -shift;
    return (our_scaled_)(low + (odd && (rest || (low & 1))));
}

/* Tell whether the sign of a real is set, of -0.0 too. */
static uint8_t our_negative_(double value)
{
    const uint16_t one = 1;

    return ((const uint8_t *)&value)[*(const uint8_t *)&one ? sizeof value - 1 : 0] >> 7;
}
{% endif %}

/* Write a number with so many of its digits behind the point, and return where in the room it begins. */
static const char *our_decimal_(char *room, size_t bytes, our_scaled_ number, char sign, uint8_t places, size_t width)
{
    char *at = room + bytes;
    size_t count = 0;

    *--at = '\0';
    do {
        if (places && count == places)
            *--at = '.';
        *--at = (char)('0' + (char)(number % 10));
        number /= 10;
        ++count;
    } while (number || count <= places);
    for (count += (size_t)(places > 0) + (size_t)(sign != '\0'); count < width; ++count)
        *--at = '0';
    if (sign)
        *--at = sign;
    return at;
}
