ALTER TABLE `customer` ADD `placeholder` integer DEFAULT false NOT NULL;--> statement-breakpoint
CREATE UNIQUE INDEX `customer_placeholder_once` ON `customer` (`placeholder`) WHERE placeholder;--> statement-breakpoint
UPDATE `customer` SET `placeholder` = 1 WHERE `id` = (
  SELECT min(`customer`.`id`) FROM `customer`
  JOIN `enquiry` ON `enquiry`.`customer_id` = `customer`.`id`
  JOIN `self_order` ON `self_order`.`enquiry_id` = `enquiry`.`id`
  WHERE `customer`.`name` = 'Self-service, not named yet' AND `self_order`.`by_key_id` IS NULL
);
