import type { Block, Handout, Inline, Section } from "#handout/handout.js";
import { plainLetter } from "./letter.js";

// Small invented sheets in scripts no translation uses yet: to see that they are drawn, broken and read back as they are written.

const from = "plan.yaml:1:1";
const text = (words: string): Inline => ({ kind: "text", text: words });
const line = (...words: (string | Inline)[]): Inline[] =>
  words.map((one) => (typeof one === "string" ? text(one) : one));
const phone = (shown: string): Inline => ({ kind: "phone", e164: "+13125550142", text: shown, from });
const paragraph = (...words: (string | Inline)[]): Block => ({
  kind: "paragraph",
  role: "body",
  inlines: line(...words),
});
const list = (mark: "bullet" | "number" | "tick", items: string[]): Block => ({
  kind: "list",
  mark,
  items: items.map((words) => ({ inlines: line(words) })),
});
const cell = (words: string, align: "start" | "end" = "start") => ({ inlines: line(words), align });
const section = (id: string, title: string, blocks: Block[]): Section => ({
  kind: "section",
  id,
  level: 2,
  weight: "plain",
  title: line(title),
  blocks,
});

type Words = { title: string; subtitle: string; sections: Section[]; notice?: Inline[]; digits?: string };
const sheet = (
  language: string,
  direction: "ltr" | "rtl",
  { title, subtitle, sections, notice = [] }: Words,
): Handout => ({
  language,
  direction,
  title,
  subtitle: line(subtitle),
  running: { patient: "Bramble", date: "2026-03-04", clinic: "Juniper Row" },
  pageWords: { before: "", between: " / ", after: "", digits: "0123456789" },
  issued: "2026-03-04T16:30",
  zone: "America/Chicago",
  subject: title,
  clinic: { name: "Juniper Row", address: ["18 Juniper Row"], email: null },
  translationNotice: notice,
  sections,
  events: [],
  calendarName: title,
  letter: plainLetter,
});

const month = (title: string, weekdays: string[], legend: string): Block => ({
  kind: "month",
  iso: "2026-03",
  title,
  weekdays: weekdays.map((short) => ({ short, long: short })),
  weeks: [0, 7].map((week) =>
    weekdays.map((_, day) => {
      const number = week + day + 1;
      const iso = `2026-03-${String(number).padStart(2, "0")}`;
      const marks = number === 4 ? [{ mark: "booked" as const, text: legend }] : [];
      return { iso, text: String(number), label: iso, inMonth: true, marks };
    }),
  ),
  legend: [{ mark: "booked", text: legend }],
});

/** Every kind of thing that is turned round on a page from right to left; brackets, a name and a number inside a line. */
export const arabic = sheet("ar", "rtl", {
  title: "العناية بالكلب في المنزل بعد العملية",
  subtitle: "كلبة معقمة عمرها ست سنوات",
  sections: [
    section("ring", "بمن تتصل", [
      paragraph(
        "عندما تكون العيادة مفتوحة اتصل بعيادة \u2068Juniper Row\u2069 على الرقم ",
        phone("\u2066(312) 555-0142\u2069"),
        " في أي وقت من النهار.",
      ),
      paragraph("إذا كان الجرح ينزف كثيرًا (أكثر من خمس دقائق) فاذهب إلى المستشفى فورًا ولا تنتظر حتى الصباح."),
    ]),
    section("home", "ماذا تفعل في المنزل", [
      list("bullet", ["أبق الضمادة نظيفة وجافة طوال الوقت.", "لا تدع الكلب يلعق الجرح أو يعضه."]),
      list("number", ["أعط حبة واحدة مع الطعام كل صباح ومساء.", "انظر إلى الجلد حول الضمادة مرتين في اليوم."]),
      list("tick", ["دواء الصباح", "دواء المساء"]),
    ]),
    section("cost", "الكلفة المتوقعة", [
      {
        kind: "table",
        caption: line("الكلفة بندًا بندًا"),
        head: [cell("البند"), cell("الأقل", "end"), cell("الأكثر", "end")],
        rows: [
          [cell("تغيير الضمادة في العيادة"), cell("$48.00", "end"), cell("$240.00", "end")],
          [cell("مراجعة الطبيب"), cell("$39.00", "end"), cell("$78.00", "end")],
        ],
        foot: [[cell("المجموع"), cell("$87.00", "end"), cell("$318.00", "end")]],
      },
    ]),
    section("visits", "الزيارات", [
      month("مارس", ["الأحد", "الاثنين", "الثلاثاء", "الأربعاء", "الخميس", "الجمعة", "السبت"], "زيارة محجوزة"),
    ]),
  ],
});

export const chinese = sheet("zh-Hans", "ltr", {
  title: "在家照顾手术后的狗狗",
  subtitle: "已绝育母狗，六岁，体重24.6公斤",
  sections: [
    section("ring", "应该给谁打电话", [
      paragraph(
        "诊所营业时，请打电话给Juniper Row：",
        phone("(312)\u00a0555-0142"),
        "。如果伤口流血超过五分钟，请马上去医院，不要等到早上，也不要自己给它吃人用的药。",
      ),
    ]),
    section("home", "在家要做的事", [list("bullet", ["让绷带保持干净、干燥。", "不要让狗狗舔或咬伤口。"])]),
  ],
});

export const vietnamese = sheet("vi", "ltr", {
  title: "Chăm sóc chó tại nhà sau khi phẫu thuật",
  subtitle: "Chó cái đã triệt sản, sáu tuổi",
  sections: [
    section("ring", "Gọi cho ai", [
      paragraph(
        "Khi phòng khám mở cửa, hãy gọi Juniper Row: ",
        phone("(312)\u00a0555-0142"),
        ". Nếu vết thương chảy máu quá năm phút, hãy đi cấp cứu ngay, đừng đợi đến sáng.",
      ),
    ]),
    section("home", "Những việc cần làm ở nhà", [
      list("bullet", ["Giữ băng sạch và khô.", "Đừng để chó liếm hoặc cắn vết thương."]),
    ]),
  ],
});
