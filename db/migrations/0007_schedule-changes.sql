CREATE TABLE `schedule_change` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`enquiry_id` integer NOT NULL,
	`at` text NOT NULL,
	`who` text NOT NULL,
	`screen` text DEFAULT '' NOT NULL,
	`kind` text NOT NULL,
	`detail_json` text NOT NULL,
	FOREIGN KEY (`enquiry_id`) REFERENCES `enquiry`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `schedule_change_by_enquiry` ON `schedule_change` (`enquiry_id`,`id`);--> statement-breakpoint
ALTER TABLE `schedule_line` ADD `listed_json` text;