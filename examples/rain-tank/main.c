/* Draws every moment of the rain tank's screens into a frame of one bit a pixel and writes each as a PBM picture.

       cc -std=c99 -o tank main.c && ./tank OUTPUT_FOLDER

   The frame lies as small one-colour panels take it: a byte holds eight rows of one column, the lowest bit on top, and
   eight such bands make the glass. On the device, send it after each drawing. A status screen is no safety device: an
   overflow pipe, a pump that stops by itself and a person who looks come first, and so do local codes and licensed
   practice. */

#define RAIN_TANK_IMPLEMENTATION
#include "rain_tank.h"

#include "../ports/frame_pages.h"
#include "../write_picture.h"

#define WIDTH RAIN_TANK_PANEL_WIDTH
#define HEIGHT RAIN_TANK_PANEL_HEIGHT

static uint8_t bytes[WIDTH * HEIGHT / 8];
static pages_frame glass = {bytes, WIDTH, 0, 0, 0, 0};
static const rain_tank_port port = {pages_window, pages_run, &glass};
static const char *folder = ".";

static int write_picture(const char *name)
{
    return write_pages(&glass, HEIGHT, folder, name);
}

/* What the tank's float and flow meter say; LOST, which no range holds, stands for no answer. */
enum { LOST = 32767 };

typedef struct state {
    const char *name;
    unsigned level, volume;
    double flow;
    uint8_t radio, clock;
} state;

#define RADIO(word) RAIN_TANK_TANK_RADIO_STATE_##word
#define CLOCK(word) RAIN_TANK_TANK_CLOCK_STATE_##word

static const state STATES[] = {
    {"summer", 12, 360, -4.5, RADIO(UP), CLOCK(UP)},
    {"nine", 9, 270, 0.0, RADIO(UP), CLOCK(UP)},
    {"ten", 10, 300, 18.2, RADIO(UP), CLOCK(TRYING_2)},
    {"downpour", 87, 2610, 99.9, RADIO(UP), CLOCK(UP)},
    {"brim", 100, 3000, 42.0, RADIO(FAULT), CLOCK(UP)},
    {"pumping", 64, 1920, -99.9, RADIO(UP), CLOCK(FAULT)},
    {"float-lost", LOST, LOST, LOST, RADIO(UP), CLOCK(UP)},
};

static int start(const char *name, int message)
{
    char text[RAIN_TANK_START_MESSAGE_TEXT_BYTES];
    rain_tank_start_values values;

    rain_tank_start_message_text(text, message);
    values.message = text;
    rain_tank_start_draw(&port, &values);
    return write_picture(name);
}

static int before_reading(void)
{
    rain_tank_tank_values values;

    values.level = RAIN_TANK_TANK_LEVEL_FIRST;
    values.volume = RAIN_TANK_TANK_VOLUME_FIRST;
    values.flow = RAIN_TANK_TANK_FLOW_FIRST;
    values.bar = RAIN_TANK_NO_VALUE;
    values.radio = RADIO(TRYING_1);
    values.clock = CLOCK(OFF);
    rain_tank_tank_draw(&port, &values);
    return write_picture("before-reading");
}

static int tank(const state *now)
{
    char level[RAIN_TANK_TANK_LEVEL_TEXT_BYTES], volume[RAIN_TANK_TANK_VOLUME_TEXT_BYTES];
    char flow[RAIN_TANK_TANK_FLOW_TEXT_BYTES];
    rain_tank_tank_values values;

    rain_tank_tank_level_text(level, now->level);
    rain_tank_tank_volume_text(volume, now->volume);
    rain_tank_tank_flow_text(flow, now->flow);
    values.level = level;
    values.volume = volume;
    values.flow = flow;
    values.bar = (int32_t)now->level;
    values.radio = now->radio;
    values.clock = now->clock;
    rain_tank_tank_draw(&port, &values);
    return write_picture(now->name);
}

static int alarm_since(const char *name, int what, const char *since)
{
    char text[RAIN_TANK_ALARM_WHAT_TEXT_BYTES];
    rain_tank_alarm_values values;

    rain_tank_alarm_what_text(text, what);
    values.what = text;
    values.since = since;
    rain_tank_alarm_draw(&port, &values);
    return write_picture(name);
}

static int alarm_at(const char *name, int what, unsigned hour, unsigned minute)
{
    char since[RAIN_TANK_ALARM_SINCE_TEXT_BYTES];

    rain_tank_alarm_since_text(since, hour, minute);
    return alarm_since(name, what, since);
}

#define MESSAGE(word) RAIN_TANK_START_MESSAGE_CHOICE_##word
#define WHAT(word) RAIN_TANK_ALARM_WHAT_CHOICE_##word

int main(int count, char **words)
{
    size_t at;
    int failed = 0;

    if (count > 1)
        folder = words[1];
    failed |= start("power-on", MESSAGE(WAKING_THE_FLOAT));
    failed |= start("joining", MESSAGE(JOINING_THE_GARDEN_RADIO));
    failed |= start("ready", MESSAGE(READY));
    failed |= before_reading();
    for (at = 0; at < sizeof STATES / sizeof STATES[0]; ++at)
        failed |= tank(&STATES[at]);
    failed |= alarm_at("overflow", WHAT(TANK_OVERFLOWS), 4, 7);
    failed |= alarm_at("dry", WHAT(PUMP_RUNS_DRY), 23, 59);
    failed |= alarm_at("empty", WHAT(TANK_EMPTY), 0, 0);
    failed |= alarm_since("lost", WHAT(FLOAT_IS_LOST), RAIN_TANK_ALARM_SINCE_FAULT);
    return failed;
}
