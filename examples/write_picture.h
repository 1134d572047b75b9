/* On a PC: writes what a frame buffer of examples/ports holds as a picture, so that it can be looked at and compared. */

#ifndef WRITE_PICTURE_HEADER
#define WRITE_PICTURE_HEADER

#include <stdio.h>

/* Open FOLDER/NAME.SUFFIX for writing, or say why not. */
static inline FILE *picture_file(const char *folder, const char *name, const char *suffix)
{
    char path[512];
    FILE *file;

    snprintf(path, sizeof path, "%s/%s.%s", folder, name, suffix);
    file = fopen(path, "wb");
    if (!file)
        perror(path);
    return file;
}

#ifdef FRAME_RGB565_HEADER
/* Write a frame of 16-bit pixels as a PPM picture; return 0 if that went well. */
static inline int write_colours(const rgb565_frame *frame, unsigned height, const char *folder, const char *name)
{
    const size_t pixels = (size_t)frame->width * height;
    FILE *file = picture_file(folder, name, "ppm");
    size_t at;

    if (!file)
        return 1;
    fprintf(file, "P6 %u %u 255\n", (unsigned)frame->width, height);
    for (at = 0; at < pixels; ++at) {
        const unsigned colour = frame->pixels[at];

        fputc((int)(((colour >> 11) * 255u + 15u) / 31u), file);
        fputc((int)(((colour >> 5 & 63u) * 255u + 31u) / 63u), file);
        fputc((int)(((colour & 31u) * 255u + 15u) / 31u), file);
    }
    return fclose(file) != 0;
}
#endif

#ifdef FRAME_PAGES_HEADER
/* Write a frame of one bit a pixel in page order as a PBM picture, in which 1 is dark; return 0 if that went well. */
static inline int write_pages(const pages_frame *frame, unsigned height, const char *folder, const char *name)
{
    FILE *file = picture_file(folder, name, "pbm");
    unsigned x, y;

    if (!file)
        return 1;
    fprintf(file, "P1 %u %u\n", (unsigned)frame->width, height);
    for (y = 0; y < height; ++y) {
        for (x = 0; x < frame->width; ++x)
            fputc(frame->bytes[(size_t)(y / 8) * frame->width + x] >> y % 8 & 1 ? '0' : '1', file);
        fputc('\n', file);
    }
    return fclose(file) != 0;
}
#endif

#endif
